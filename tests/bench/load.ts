import { setTimeout as sleep } from 'node:timers/promises';
import type { Draft, Place } from '../helpers/discord/discordInteraction.ts';
import type { BenchBot } from './benchBot.ts';

/** A member's nth interaction. */
export type Script = (member: Place, n: number) => Draft;

const next = (bot: BenchBot, script: Script, n: number): Draft => {
  const member = bot.members[n % bot.members.length];
  if (!member) throw new Error('a bot without members');
  return script(member, n);
};

/** Interactions a second with a fixed number in flight, and the CPU time for each in milliseconds. */
export const throughput = async (
  bot: BenchBot,
  script: Script,
  inFlight: number,
  seconds: number,
): Promise<{ rate: number; processor: number }> => {
  const processor = bot.processorTime;
  const end = performance.now() + seconds * 1_000;
  const began = performance.now();
  let done = 0;
  const worker = async (): Promise<void> => {
    while (performance.now() < end) {
      await bot.use(next(bot, script, done));
      done += 1;
    }
  };
  await Promise.all(Array.from({ length: inFlight }, worker));
  return {
    rate: (done * 1_000) / (performance.now() - began),
    processor: (bot.processorTime - processor) / done,
  };
};

/** Response times in milliseconds at an even rate of commands, however slow the bot is. */
export const latencies = async (
  bot: BenchBot,
  script: Script,
  rate: number,
  seconds: number,
): Promise<number[]> => {
  const took: number[] = [];
  const under: Promise<void>[] = [];
  const began = performance.now();
  for (let n = 0; n < rate * seconds; n += 1) {
    const due = began + (n * 1_000) / rate;
    const wait = due - performance.now();
    if (wait > 0) await sleep(wait);
    under.push(bot.use(next(bot, script, n)).then((one) => void took.push(one.took)));
  }
  await Promise.all(under);
  return took;
};

export const percentile = (values: readonly number[], part: number): number => {
  const sorted = [...values].sort((a, b) => a - b);
  return sorted[Math.min(sorted.length - 1, Math.floor(part * sorted.length))] ?? Number.NaN;
};

export const median = (values: readonly number[]): number => percentile(values, 0.5);
