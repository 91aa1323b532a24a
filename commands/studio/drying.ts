import { definedOnly } from '../../src/definedOnly.ts';
import { logs, optional, refusal } from '../../src/contract/contract.ts';
import { yesNo } from '../../src/contract/kinds/picks.ts';
import { percent, temperature, time } from '../../src/contract/kinds/quantities.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';
import { fraction } from '../../src/glaze/units.ts';
import { hours } from '../../src/studio/ids.ts';

export const setDrying = logs({
  name: 'drying',
  about: (w) => w.schedule.dryingAbout,
  who: 'keeper',
  options: {
    hours: optional(time(hours(1), hours(72), 'h', '12h'), (w) => w.schedule.dryingHours),
    night: optional(yesNo, (w) => w.schedule.dryingNight),
    temperature: optional(temperature(-10, 50), (w) => w.schedule.temperature),
    humidity: optional(percent(1, 100, '60'), (w) => w.schedule.humidity),
  },
  async run(v, { words, book, now, member }) {
    const { schedule: w } = words;
    const minimumHours = v.hours === undefined ? undefined : v.hours / hours(1);
    const humidity = v.humidity === undefined ? undefined : fraction(v.humidity / 100);
    const said = definedOnly({ minimumHours, night: v.night, temperature: v.temperature, humidity });
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
