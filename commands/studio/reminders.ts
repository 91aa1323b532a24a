import { definedOnly } from '../../src/definedOnly.ts';
import { logs, optional, refusal } from '../../src/contract/contract.ts';
import { quietHours } from '../../src/contract/kinds/hours.ts';
import { time } from '../../src/contract/kinds/quantities.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';
import { hours, minutes } from '../../src/studio/ids.ts';

export const setReminders = logs({
  name: 'reminders',
  about: (w) => w.schedule.remindersAbout,
  who: 'keeper',
  options: {
    lead: optional(time(minutes(5), hours(24), 'min', '45 min'), (w) => w.schedule.lead),
    quiet: optional(quietHours, (w) => w.schedule.quiet),
  },
  async run(v, { words, book, now, member }) {
    const { schedule: w } = words;
    const said = definedOnly({ lead: v.lead, quiet: v.quiet });
    if (Object.keys(said).length === 0) return refusal(w.nothing('lead:45min'));
    const { entry, state } = await book.logStudio({ kind: 'reminders', ...said }, stampNow({ now, member }));
    const { lead, quiet } = state.reminders;
    return {
      kind: 'answer',
      title: w.remindersSet(state.reminders),
      data: { entry: entry.id, leadMinutes: lead / minutes(1), quiet: quiet ? { ...quiet } : null },
    };
  },
});
