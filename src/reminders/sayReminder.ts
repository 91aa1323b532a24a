import type { Voice } from '../contract/desk.ts';
import { instant, later, minutes, duration, since, type Instant } from '../studio/ids.ts';
import type { ClaimedReminder, ReminderOutcome } from '../studio/logbook/ports.ts';
import { quietAt } from '../studio/time/quietHours.ts';
import { reminderLog } from '../words/remind/reminderWords.ts';
import { composeReminder } from './composeReminder.ts';
import type { ReminderPorts } from './ports.ts';

type Spoken = Awaited<ReturnType<Voice['speak']>>;

/** While Discord still knows the nonce, an unconfirmed reminder is repeated soon; later, at growing intervals. */
const soonest = 15_000;
const slowest = 15 * 60_000;
/**
 * How long to wait if no platform here can reach the member: perhaps theirs is not connected, or a keeper must change a
 * setting.
 */
const whenUnreached = minutes(30);

const afterTries = (tries: number, now: Instant): Instant =>
  later(now, duration(Math.min(slowest, soonest * 2 ** Math.min(tries - 1, 10))));

/** Later than this after its time, a reminder counts as late. */
const late = minutes(5);

const countedAs = (outcome: ReminderOutcome, { dueAt }: ClaimedReminder, now: Instant) => {
  if ('told' in outcome) return since(dueAt, now) > late ? 'told-late' : 'told';
  return 'again' in outcome ? 'again' : 'dropped';
};

const whomOf = (about: ClaimedReminder['about']) =>
  about.kind === 'morning' && about.by === 'channel' ? 'everyone' : 'member';

/** Tries one platform after another; a bug in one does not stop the others. */
const speak = async (
  { voices, log }: ReminderPorts,
  { studio, member, nonce, key, about }: ClaimedReminder,
  reply: Parameters<Voice['speak']>[2],
): Promise<Spoken[]> => {
  const answers: Spoken[] = [];
  for (const voice of voices) {
    try {
      answers.push(await voice.speak(studio, member, reply, nonce, whomOf(about)));
    } catch (error) {
      log.error({ err: error, studio, key }, reminderLog.failed);
      answers.push('later');
    }
    const last = answers.at(-1);
    // It may have been sent already, so no other platform is tried until that is known: it could be sent twice.
    if (last === 'said' || last === 'unsure') break;
  }
  return answers;
};

const outcomeOf = async (
  ports: ReminderPorts,
  reminder: ClaimedReminder,
  answers: Spoken[],
): Promise<ReminderOutcome> => {
  const { studio, key, tries, about } = reminder;
  const now = ports.clock.now();
  if (answers.includes('said')) return { told: true };
  if (answers.includes('unsure')) return { again: afterTries(tries, now), unsure: true };
  if (answers.includes('later')) return { again: afterTries(tries, now), unsure: false };
  const lost = answers.find((one) => one === 'gone' || one === 'closed');
  if (lost === undefined) ports.log.info({ studio, key }, reminderLog.nobody);
  else {
    ports.log.warn({ studio, key, why: lost }, reminderLog.failed);
    if (about.kind !== 'unreachable') await ports.queue.unreachable(studio, lost, now);
  }
  return { again: later(now, whenUnreached), unsure: false };
};

/** Undefined when another process has it by now. */
const attempt = async (
  ports: ReminderPorts,
  reminder: ClaimedReminder,
): Promise<ReminderOutcome | undefined> => {
  const { books, words, handbook, clock, log } = ports;
  const { studio, key, goodUntil, dueAt } = reminder;
  const now = clock.now();
  if (now >= goodUntil) {
    log.info({ studio, key, dueAt, goodUntil }, reminderLog.outOfDate);
    return { dropped: true };
  }
  // The clock was set back, so it is not due yet.
  if (now < dueAt) return { again: dueAt, unsure: reminder.unsureSince !== undefined };
  const { quiet, reply } = await books.read(studio, async (book) => {
    const { reminders, zone } = await book.studio();
    return {
      // Who asks to be told in ten minutes is awake.
      quiet: reminder.about.kind === 'asked' ? undefined : quietAt(now, reminders.quiet, zone),
      reply: await composeReminder({ reminder, book, words, handbook, now }),
    };
  });
  if (!reply) {
    log.info({ studio, key }, reminderLog.notNeeded);
    return { dropped: true };
  }
  if (quiet) return { again: instant(quiet.until), unsure: reminder.unsureSince !== undefined };
  // This process may have stood still since the claim, for longer than the lease.
  if (!(await ports.queue.isHeld(reminder))) return undefined;
  return outcomeOf(ports, reminder, await speak(ports, reminder, reply));
};

/** Sends a claimed reminder and records the result in the queue. */
export const sayReminder = async (ports: ReminderPorts, reminder: ClaimedReminder): Promise<void> => {
  const outcome = await attempt(ports, reminder).catch((error: unknown): ReminderOutcome => {
    const { studio, key, tries } = reminder;
    ports.log.error({ err: error, studio, key }, reminderLog.failed);
    return { again: afterTries(tries, ports.clock.now()), unsure: true };
  });
  if (outcome === undefined) return;
  ports.count?.(countedAs(outcome, reminder, ports.clock.now()));
  await ports.queue.settle(reminder, outcome);
};
