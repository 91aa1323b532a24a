import { logs, refusal, needed, optional, toRun } from '../../src/contract/contract.ts';
import { entryStamp } from '../../src/contract/entryStamp.ts';
import { coat as coatKind } from '../../src/contract/kinds/coat.ts';
import { pick } from '../../src/contract/kinds/picks.ts';
import { whenAndNote } from '../../src/contract/kinds/usualOptions.ts';
import { isoInstant } from '../../src/studio/time/isoInstant.ts';
import { coatEnds, type CoatEnd } from '../../src/studio/resist/coatEvent.ts';
import { coatReady } from '../../src/studio/resist/coatReady.ts';
import { choiceWords } from '../../src/words/desk/choiceWords.ts';

export const coatOff = logs({
  name: 'off',
  about: (w) => w.coat.offAbout,
  who: 'member',
  private: true,
  options: {
    coat: needed(coatKind, (w) => w.coat.whichAbout),
    how: optional(
      pick(
        coatEnds,
        {
          'washed-off': 'washed',
          wash: 'washed',
          peel: 'peeled',
          removed: 'peeled',
          glaze: 'glazed',
          dipped: 'glazed',
          fired: 'glazed',
        },
        choiceWords.coatEnd,
      ),
      (w) => w.coat.how,
    ),
    ...whenAndNote,
  },
  async run(v, context) {
    const { words, book } = context;
    const stamp = entryStamp(context, v);
    const { coat: w } = words;
    const { id, seq, resist, onAt } = v.coat;
    if (stamp.at < onAt) return refusal(w.offBeforeOn(id, onAt), { coat: id });
    const ready = coatReady(v.coat, await book.studio());
    const early = ready !== 'never' && ready.readyAt > stamp.at ? ready.readyAt : undefined;
    const usual: CoatEnd = resist === 'latex' || resist === 'tape' ? 'peeled' : 'glazed';
    const how = v.how ?? usual;
    const { entry } = await book.logCoat({ kind: 'off', of: seq, how }, stamp);
    return {
      kind: 'answer',
      title: w.off(id, how, entry.id),
      cautions: early !== undefined && how === 'glazed' ? [w.offEarly(early)] : [],
      actions: [toRun(w.takeBack, `/undo entry:${entry.id}`)],
      data: { entry: entry.id, coat: id, how, at: isoInstant(stamp.at) },
    };
  },
});
