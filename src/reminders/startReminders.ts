import { setTimeout as sleep } from 'node:timers/promises';
import { duration, hours, later, minutes, since, type Instant } from '../studio/ids.ts';
import { reminderLog } from '../words/remind/reminderWords.ts';
import type { ReminderPorts } from './ports.ts';
import { sayReminder } from './sayReminder.ts';

export interface ReminderSettings {
  /** How often to look. Short, so that a clock that is set is soon noticed. */
  every?: number;
  /** How many are said at once: the platform's client paces them. */
  together?: number;
  /** How often what comes round again is asked for. */
  planEvery?: number;
  /** How long a reminder that was taken is nobody else's; within it a platform still knows its nonce. */
  lease?: number;
}

export interface Reminders {
  /** Says what is due; answers how many there were. */
  tick(): Promise<number>;
  /** Lets what is being said be said, then stops. */
  stop(): Promise<void>;
}

/** Says everything that is due, again and again, until stopped. */
export const startReminders = async (
  ports: ReminderPorts,
  { every = 5_000, together = 20, planEvery = hours(1), lease = minutes(2) }: ReminderSettings = {},
): Promise<Reminders> => {
  const { queue, clock, log } = ports;
  const stopping = new AbortController();
  let planned: Instant | undefined;
  const plan = async (now: Instant): Promise<void> => {
    // The clock may have been set back.
    if (planned !== undefined && Math.abs(since(planned, now)) < planEvery) return;
    planned = now;
    await queue.plan(now).catch((error: unknown) => log.error({ error }, reminderLog.broken));
  };
  const tick = async (): Promise<number> => {
    let said = 0;
    await plan(clock.now());
    while (!stopping.signal.aborted) {
      const now = clock.now();
      const due = await queue.claim(now, later(now, duration(lease)), together);
      if (due.length === 0) break;
      await Promise.all(due.map((one) => sayReminder(ports, one)));
      said += due.length;
    }
    return said;
  };
  await queue.reclaim(clock.now());
  const going = (async () => {
    while (!stopping.signal.aborted) {
      await tick().catch((error: unknown) => log.error({ err: error }, reminderLog.broken));
      await sleep(every, undefined, { signal: stopping.signal, ref: false }).catch(() => undefined);
    }
  })();
  return {
    tick,
    stop: async () => {
      stopping.abort();
      await going;
    },
  };
};
