import { spawn, type ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { readFileSync } from 'node:fs';
import { setTimeout as sleep } from 'node:timers/promises';
import { fileURLToPath } from 'node:url';
import { DiscordDouble } from '../helpers/discord/discordDouble.ts';
import { type Draft, type Place, slash } from '../helpers/discord/discordInteraction.ts';
import type { Interaction } from '../helpers/discord/discordWorld.ts';

/** Longer than Discord waits for an answer. */
const EXPIRED = 5_000;

/** A bot in its own process, with its own stand-in for Discord. */
export class BenchBot {
  readonly discord: DiscordDouble;
  readonly members: Place[];
  /** Milliseconds from process start to its connection and to its first answer. */
  readonly started: { connected: number; answered: number };
  /** Resident memory when ready, in MiB. */
  readonly memory: number;
  readonly #child: ChildProcess;
  readonly #waiting = new Map<string, (interaction: Interaction) => void>();

  private constructor(
    { discord, child, members }: { discord: DiscordDouble; child: ChildProcess; members: Place[] },
    { started, memory }: Pick<BenchBot, 'started' | 'memory'>,
  ) {
    this.discord = discord;
    this.#child = child;
    this.members = members;
    this.started = started;
    this.memory = memory;
    discord.onAnswer = (interaction) => {
      this.#waiting.get(interaction.id)?.(interaction);
      this.#waiting.delete(interaction.id);
    };
  }

  static async start(program: string, env: Record<string, string>): Promise<BenchBot> {
    const discord = await DiscordDouble.start({ lean: true });
    const channel = discord.channel();
    const members = Array.from({ length: 40 }, (_, i) => ({ by: discord.person(`potter ${i}`), channel }));
    const began = performance.now();
    const child = spawn(process.execPath, [fileURLToPath(new URL(program, import.meta.url))], {
      stdio: ['ignore', 'ignore', 'inherit'],
      env: {
        PATH: process.env['PATH'],
        TZ: 'UTC',
        NODE_ENV: 'production',
        ...env,
        DISCORD_API: discord.api,
        DISCORD_TOKEN: discord.token,
      },
    });
    await discord.until(() => discord.gateway.connected, `${program} to connect`, 30_000);
    const connected = performance.now() - began;
    const first = discord.deliver(slash({ by: discord.person('first'), channel }, ['help']));
    await discord.until(() => first.acknowledged !== undefined, `${program} to answer`, 30_000);
    const answered = performance.now() - began;
    await sleep(1_500);
    const memory = residentMiB(child.pid);
    return new BenchBot({ discord, child, members }, { started: { connected, answered }, memory });
  }

  get memoryNow(): number {
    return residentMiB(this.#child.pid);
  }

  /** CPU time of the process, in milliseconds. */
  get processorTime(): number {
    const fields = readFileSync(`/proc/${this.#child.pid}/stat`, 'utf8')
      .replace(/^.*\) /s, '')
      .split(' ');
    // User and system mode, in kernel ticks of 10 ms.
    return 10 * (Number(fields[11]) + Number(fields[12]));
  }

  /**
   * Sends an interaction and drops it once it is answered; returns how long that took, in milliseconds. One that expired
   * unanswered, as on a machine that stood still, is waited for no longer.
   */
  async use(draft: Draft): Promise<{ took: number; interaction: Interaction }> {
    const began = performance.now();
    const interaction = await new Promise<Interaction>((resolve) => {
      const sent = this.discord.deliver(draft);
      const expired = setTimeout(resolve, EXPIRED, sent);
      this.#waiting.set(sent.id, (answered) => {
        clearTimeout(expired);
        resolve(answered);
      });
    });
    this.#waiting.delete(interaction.id);
    const took = performance.now() - began;
    this.discord.world.interactions.delete(interaction.id);
    this.discord.world.messages.delete(interaction.original ?? '');
    return { took, interaction };
  }

  async stop(): Promise<void> {
    this.#child.kill('SIGTERM');
    await once(this.#child, 'exit');
    await this.discord.stop();
  }
}

/** Resident memory of a process, from /proc. */
const residentMiB = (pid: number | undefined): number => {
  const kib = /^VmRSS:\s+(\d+)/m.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1];
  return Number(kib) / 1024;
};
