import { logs, needed, optional, refusal } from '../../src/contract/contract.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';
import { clockOrOff } from '../../src/contract/kinds/hours.ts';
import { pick } from '../../src/contract/kinds/picks.ts';
import { quietEnd } from '../../src/studio/time/quietHours.ts';

export const setMorning = logs({
  name: 'morning',
  about: (w) => w.schedule.morningAbout,
  who: 'keeper',
  options: {
    at: needed(clockOrOff, (w) => w.schedule.morningAt),
    way: optional(
      pick(['direct', 'channel'], { keepers: 'direct', dm: 'direct', everybody: 'channel' }),
      (w) => w.schedule.morningWay,
    ),
  },
  async run(v, { words, book, now, member }) {
    const { schedule: w } = words;
    const studio = await book.studio();
    const before = studio.morning;
    const morning = v.at === 'off' ? undefined : { at: v.at, by: v.way ?? before?.by ?? 'direct' };
    const quiet = morning && quietEnd(morning.at, studio.reminders.quiet);
    if (morning && quiet?.nextDay) return refusal(w.morningTooLate(morning.at, quiet.at));
    const { entry, state } = await book.logStudio(
      { kind: 'morning', ...(morning && { morning }) },
      stampNow({ now, member }),
    );
    return {
      kind: 'answer',
      title: morning ? w.morningSet({ ...morning, ...(quiet && { at: quiet.at }) }) : w.morningOff,
      reasons: [
        ...(morning && quiet ? [w.morningQuiet(morning.at, quiet.at)] : []),
        ...(morning?.by === 'channel' && state.channel === undefined ? [w.morningNoChannel] : []),
        ...(state.zoneSet ? [] : [words.studio.noZone]),
      ],
      data: { entry: entry.id, morning: morning ? { minutes: morning.at, by: morning.by } : null },
    };
  },
});
