import { days, entryId, instant, later, type Instant, type StreamNo } from '../ids.ts';
import { keepersOf } from '../settings/keepersOf.ts';
import { outsideQuiet } from '../time/quietHours.ts';
import type { WantedReminder } from './reminder.ts';
import type { Studio } from '../settings/studio.ts';
import type { UnloggedChange } from '../contents/unloggedChange.ts';

/** Who was there may remember for about so long: common practice. */
const isNews = days(7);

/** Tells the keepers of a change that nobody logged; whoever took the second reading was told with it. */
export const unloggedReminders = (
  bucket: StreamNo,
  { to, found }: UnloggedChange,
  studio: Studio,
  now: Instant,
): WantedReminder[] => {
  // A reading may be logged days after it was taken: it is news from now on.
  const dueAt = outsideQuiet(instant(Math.max(found.at, now)), studio.reminders.quiet, studio.zone, 'after');
  return keepersOf(studio)
    .filter((member) => member !== found.by)
    .map((member) => ({
      key: `${entryId(bucket, to.seq)}-unlogged`,
      member,
      about: { kind: 'unlogged', bucket, reading: to.seq },
      dueAt,
      goodUntil: later(dueAt, isNews),
    }));
};
