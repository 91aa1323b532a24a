import { definedOnly } from '../../src/definedOnly.ts';
import { isoInstant } from '../../src/studio/time/isoInstant.ts';
import { logs, optional, refusal } from '../../src/contract/contract.ts';
import { yesNo } from '../../src/contract/kinds/picks.ts';
import { hourAhead } from '../../src/contract/kinds/when.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';

export const setFiring = logs({
  name: 'firing',
  about: (w) => w.schedule.firingAbout,
  who: 'keeper',
  options: {
    when: optional({ ...hourAhead, example: 'friday 8am' }, (w) => w.schedule.firingWhen),
    off: optional(yesNo, (w) => w.schedule.firingOff),
  },
  async run(v, { words, book, now, member, typed }) {
    const { schedule: w } = words;
    if (v.when === undefined && v.off !== true) return refusal(w.nothing('when:"friday 8am"'));
    const at = v.off === true ? undefined : v.when;
    // The time was still to come when it was typed, but the line arrived late.
    if (at !== undefined && at < now)
      return refusal(words.option.instant({ kind: 'past', at, typed: typed['when'] ?? '' }));
    const { entry } = await book.logStudio(
      { kind: 'firing', ...definedOnly({ at }) },
      stampNow({ now, member }),
    );
    return {
      kind: 'answer',
      title: at === undefined ? w.firingCalledOff : w.firingSet(at),
      data: { entry: entry.id, firing: at === undefined ? null : isoInstant(at) },
    };
  },
});
