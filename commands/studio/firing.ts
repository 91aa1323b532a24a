import { isoInstant } from '../../src/studio/time/isoInstant.ts';
import { logs } from '../../src/contract/contract.ts';
import { yesNo } from '../../src/contract/kinds/picks.ts';
import { hourAhead } from '../../src/contract/kinds/when.ts';

export const setFiring = logs({
  name: 'firing',
  about: (w) => w.schedule.firingAbout,
  who: 'keeper',
  options: {
    when: {
      kind: { ...hourAhead, example: 'friday 8am' },
      needed: false,
      about: (w) => w.schedule.firingWhen,
    },
    off: { kind: yesNo, needed: false, about: (w) => w.schedule.firingOff },
  },
  async run(v, { words, book, now, member, typed }) {
    const { schedule: w } = words;
    if (v.when === undefined && v.off !== true)
      return { kind: 'refusal', title: w.nothing('when:"friday 8am"'), data: {} };
    const at = v.off === true ? undefined : v.when;
    // Typed when it was still to come, and sent too late.
    if (at !== undefined && at < now)
      return {
        kind: 'refusal',
        title: words.option.instant({ kind: 'past', at, typed: typed['when'] ?? '' }),
        data: {},
      };
    const { entry } = await book.logStudio(
      { kind: 'firing', ...(at !== undefined && { at }) },
      { at: now, loggedAt: now, by: member },
    );
    return {
      kind: 'answer',
      title: at === undefined ? w.firingCalledOff : w.firingSet(at),
      data: { entry: entry.id, firing: at === undefined ? null : isoInstant(at) },
    };
  },
});
