import { days, entryId, instant, later, type Instant, type StreamNo } from '../ids.ts';
import { keepersOf } from '../settings/keepersOf.ts';
import { outsideQuiet } from '../time/quietHours.ts';
import type { WantedReminder } from './reminder.ts';
import type { Studio } from '../settings/studio.ts';
import type { UnloggedChange } from '../contents/unloggedChange.ts';

/** People remember for about this long: common practice. */
const changeNewsFor = days(7);

/** Tells the keepers about a change that nobody logged, except the one whose reading showed it and who knows already. */
export const unloggedReminders = (
  bucket: StreamNo,
  { to, found }: UnloggedChange,
  studio: Studio,
  now: Instant,
): WantedReminder[] => {
  // A reading may be logged days after it was taken; the news starts now.
  const dueAt = outsideQuiet(instant(Math.max(found.at, now)), studio.reminders.quiet, studio.zone, 'after');
  return keepersOf(studio)
    .filter((member) => member !== found.by)
    .map((member) => ({
      key: `${entryId(bucket, to.seq)}-unlogged`,
      member,
      about: { kind: 'unlogged', bucket, reading: to.seq },
      dueAt,
      goodUntil: later(dueAt, changeNewsFor),
    }));
};
