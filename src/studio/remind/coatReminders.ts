import { definedOnly } from '../../definedOnly.ts';
import type { ResistCoat } from '../resist/resistCoat.ts';
import { coatPlan } from '../resist/coatPlan.ts';
import { coatReady } from '../resist/coatReady.ts';
import { days, duration, hours, instant, later, type Instant } from '../ids.ts';
import { isoDay } from '../time/openingHours.ts';
import { outsideQuiet } from '../time/quietHours.ts';
import type { WantedReminder } from './reminder.ts';
import type { Studio } from '../settings/studio.ts';
import { wallOf } from '../time/wallTime.ts';

/** A warning stays useful until the mistake is made: common practice. */
const warningUsefulFor = hours(3);
/** That a coat is ready stays news until its member has seen it anyway: common practice. */
const readyNewsFor = days(3);
/** A kiln is packed so long before the firing: common practice. */
const packingBeforeFiring = hours(12);
/** Latex that goes on while the kiln is being packed is peeled as soon as it is dry: common practice. */
const latexDry = hours(1);

const before = (at: Instant, by: number): Instant => instant(at - by);

/** The reminders for a coat. What the answer to its logging has already said is left out. */
export const coatReminders = (coat: ResistCoat, studio: Studio): WantedReminder[] => {
  const ready = coatReady(coat, studio);
  if (coat.disowned || ready === 'never') return [];
  const { reminders, zone, firing } = studio;
  const { readyAt } = ready;
  const plan = coatPlan(coat, studio);
  const wanted: WantedReminder[] = [];
  const add = (kind: string, reminder: Omit<WantedReminder, 'key' | 'member'>) =>
    wanted.push({ key: `${coat.id}-${kind}`, member: coat.by, ...reminder });
  if (plan && plan.at < readyAt)
    add('early', {
      about: { kind: 'early', coat: coat.seq, plan: plan.at, ...definedOnly({ session: plan.session }) },
      dueAt: outsideQuiet(before(plan.at, reminders.lead), reminders.quiet, zone, 'before'),
      goodUntil: instant(Math.min(readyAt, later(plan.at, warningUsefulFor))),
    });
  if (coat.resist !== 'tape') {
    const dueAt = outsideQuiet(readyAt, reminders.quiet, zone, 'after');
    add('ready', { about: { kind: 'ready', coat: coat.seq }, dueAt, goodUntil: later(dueAt, readyNewsFor) });
  }
  if (coat.resist === 'latex' && firing !== undefined && firing > coat.onAt) {
    const ahead = duration(Math.max(packingBeforeFiring, reminders.lead));
    // Latex that was left on past one firing must be peeled before the next.
    add(`peel-${isoDay(wallOf(firing, zone))}`, {
      about: { kind: 'peel', coat: coat.seq, firing },
      dueAt: instant(
        Math.max(
          outsideQuiet(before(firing, ahead), reminders.quiet, zone, 'before'),
          later(coat.loggedAt, latexDry),
        ),
      ),
      goodUntil: firing,
    });
  }
  return wanted.filter(({ dueAt, goodUntil }) => dueAt > coat.loggedAt && dueAt < goodUntil);
};
