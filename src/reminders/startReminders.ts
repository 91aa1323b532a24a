import { setTimeout as sleep } from 'node:timers/promises';
import { duration, hours, later, minutes, since, type Instant } from '../studio/ids.ts';
import { reminderLog } from '../words/remind/reminderWords.ts';
import type { ClaimedReminder } from '../studio/logbook/ports.ts';
import type { ReminderPorts } from './ports.ts';
import { sayReminder } from './sayReminder.ts';

export interface ReminderSettings {
  /** How often to look for due reminders. Short, so that a changed clock is noticed soon. */
  every?: number;
  /** How many are sent at once; the platform's client limits its own rate. */
  together?: number;
  /** How often recurring reminders are planned. */
  planEvery?: number;
  /** How long a claimed reminder is reserved. It is short enough for a retry to reuse the nonce. */
  lease?: number;
}

export interface Reminders {
  /** Sends what is due; returns how many there were. */
  tick(): Promise<number>;
  /** Whether they were looked for lately, without trouble. */
  isWorking(): boolean;
  /** Waits for the reminders that are being sent, then stops. */
  stop(): Promise<void>;
}

/** A round of reminders that takes longer is stuck, or fails over and over. */
const unwell = 90_000;

/** Sends due reminders until stopped. */
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
    await queue.plan(now).catch((error: unknown) => log.error({ err: error }, reminderLog.broken));
  };
  /** Sends what was claimed, and holds it meanwhile: a platform may keep us waiting for longer than the lease. */
  const say = async (due: readonly ClaimedReminder[]): Promise<void> => {
    const holding = setInterval(
      () =>
        void queue
          .hold(due, duration(lease))
          .catch((error: unknown) => log.error({ err: error }, reminderLog.broken)),
      lease / 4,
    );
    try {
      await Promise.all(due.map((one) => sayReminder(ports, one)));
    } finally {
      clearInterval(holding);
    }
  };
  const look = async (): Promise<number> => {
    let said = 0;
    await plan(clock.now());
    while (!stopping.signal.aborted) {
      const now = clock.now();
      const due = await queue.claim(now, later(now, duration(lease)), together);
      if (due.length === 0) break;
      await say(due);
      said += due.length;
    }
    return said;
  };
  let looking: Promise<unknown> = Promise.resolve();
  /** One after another: each round ends with nothing claimed by this process. */
  const tick = (): Promise<number> => {
    const next = looking.then(look);
    looking = next.catch(() => undefined);
    return next;
  };
  let worked = performance.now();
  await queue.reclaim(clock.now());
  const going = (async () => {
    while (!stopping.signal.aborted) {
      await tick().then(
        () => (worked = performance.now()),
        (error: unknown) => log.error({ err: error }, reminderLog.broken),
      );
      await sleep(every, undefined, { signal: stopping.signal, ref: false }).catch(() => undefined);
    }
  })();
  return {
    tick,
    isWorking: () => performance.now() - worked < every + unwell,
    stop: async () => {
      stopping.abort();
      await going;
    },
  };
};
