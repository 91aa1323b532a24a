import { definedOnly } from '../../src/definedOnly.ts';
import { logs } from '../../src/contract/contract.ts';
import { yesNo } from '../../src/contract/kinds/picks.ts';
import { percent, temperature, time } from '../../src/contract/kinds/quantities.ts';
import { refusal } from '../../src/contract/refusal.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';
import { fraction } from '../../src/glaze/units.ts';
import { hours } from '../../src/studio/ids.ts';

export const setDrying = logs({
  name: 'drying',
  about: (w) => w.schedule.dryingAbout,
  who: 'keeper',
  options: {
    hours: {
      kind: time(hours(1), hours(72), 'h', '12h'),
      needed: false,
      about: (w) => w.schedule.dryingHours,
    },
    night: { kind: yesNo, needed: false, about: (w) => w.schedule.dryingNight },
    temperature: { kind: temperature(-10, 50), needed: false, about: (w) => w.schedule.temperature },
    humidity: { kind: percent(1, 100, '60'), needed: false, about: (w) => w.schedule.humidity },
  },
  async run(v, { words, book, now, member }) {
    const { schedule: w } = words;
    const said = {
      ...(v.hours !== undefined && { minimumHours: v.hours / hours(1) }),
      ...definedOnly({ night: v.night, temperature: v.temperature }),
      ...(v.humidity !== undefined && { humidity: fraction(v.humidity / 100) }),
    };
    if (Object.keys(said).length === 0) return refusal(w.nothing('hours:12h'));
    const { entry, state } = await book.logStudio({ kind: 'drying', ...said }, stampNow({ now, member }));
    return {
      kind: 'answer',
      title: w.dryingSet(state.drying),
      facts: [{ label: [w.factDrying], text: w.drying(state.drying, state.units) }],
      data: { entry: entry.id, drying: { ...state.drying } },
    };
  },
});
