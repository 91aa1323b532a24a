import type { ResistCoat } from '../resist/resistCoat.ts';
import { coatPlan } from '../resist/coatPlan.ts';
import { coatReady } from '../resist/coatReady.ts';
import { days, duration, hours, instant, later, type Instant } from '../ids.ts';
import { isoDay } from '../time/openingHours.ts';
import { outsideQuiet } from '../time/quietHours.ts';
import type { WantedReminder } from './reminder.ts';
import type { Studio } from '../settings/studio.ts';
import { wallOf } from '../time/wallTime.ts';

/** A warning is of use until the mistake has been made: common practice. */
const warned = hours(3);
/** News of a coat that is ready is of use until somebody has long seen for themselves: common practice. */
const isNews = days(3);
/** A kiln is packed long before it is fired: common practice. */
const packing = hours(12);
/** Put on when the kiln is being packed, latex is to be peeled as soon as it is dry: common practice. */
const latexDry = hours(1);

const before = (at: Instant, by: number): Instant => instant(at - by);

/** The reminders that a coat asks for. What the answer that logged it has said already is not said again. */
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
      about: {
        kind: 'early',
        coat: coat.seq,
        plan: plan.at,
        ...(plan.session !== undefined && { session: plan.session }),
      },
      dueAt: outsideQuiet(before(plan.at, reminders.lead), reminders.quiet, zone, 'before'),
      goodUntil: instant(Math.min(readyAt, later(plan.at, warned))),
    });
  if (coat.resist !== 'tape') {
    const dueAt = outsideQuiet(readyAt, reminders.quiet, zone, 'after');
    add('ready', { about: { kind: 'ready', coat: coat.seq }, dueAt, goodUntil: later(dueAt, isNews) });
  }
  if (coat.resist === 'latex' && firing !== undefined && firing > coat.onAt) {
    const ahead = duration(Math.max(packing, reminders.lead));
    // Latex that missed one firing is to be peeled before the next.
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
