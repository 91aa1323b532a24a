import { definedOnly } from '../../src/definedOnly.ts';
import { logs, needed, optional, refusal } from '../../src/contract/contract.ts';
import { pressToEdit } from '../../src/contract/replyParts.ts';
import { bucketCard } from '../../src/replies/bucket/bucketCard.ts';
import { bucketOptions } from '../../src/replies/bucket/bucketOptions.ts';
import { bucketProblem } from '../../src/replies/bucket/bucketProblem.ts';
import { markDoubt } from '../../src/replies/batch/markDoubt.ts';
import { yesNo } from '../../src/contract/kinds/picks.ts';
import { bucketSaid } from '../../src/replies/bucket/bucketSaid.ts';
import { cautionsAfter, withUnexplained } from '../../src/replies/batch/derivedMarks.ts';
import { holdPoisoned } from '../../src/replies/bucket/holdPoisoned.ts';
import { name } from '../../src/contract/kinds/texts.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';
import { noteOption } from '../../src/contract/kinds/usualOptions.ts';
import { usualSolids } from '../../src/studio/settings/usualSolids.ts';
import { days } from '../../src/studio/ids.ts';
import { usualRest } from '../../src/studio/bucket/rests.ts';

/** A bucket's settings until its keeper changes them (common practice). */
const usual = {
  use: 'dipping',
  solids: usualSolids,
  restLimit: usualRest,
  shelfLife: days(7),
  mesh: 80,
  cautions: [],
} as const;

export const addBucket = logs({
  name: 'add',
  about: (w) => w.bucket.add,
  who: 'keeper',
  form: ['name', 'pail', 'volume', 'gravity', 'seconds'],
  options: {
    name: needed(name(60, 'Gull Grey'), (w) => w.bucket.name),
    ...bucketOptions,
    sure: optional(yesNo, (w) => w.bucket.sureMarks),
    note: noteOption,
  },
  async run(v, context) {
    const { words, book } = context;
    const typed = bucketSaid(v);
    const cautions = await cautionsAfter({ ...typed, name: v.name }, [], context);
    const said = { ...typed, ...definedOnly({ cautions }) };
    const { units } = await book.studio();
    const problem = bucketProblem({ ...said, name: v.name }, v.volume, await book.buckets(), units, words);
    if (problem) return refusal(problem);
    const doubt = await markDoubt(
      {
        path: 'bucket add',
        listed: v.cautions,
        after: { cautions: [], ...said, name: v.name },
        marks: [],
        mixed: false,
        sure: v.sure === true,
        note: v.note,
      },
      context,
    );
    if (doubt) return doubt;
    const logged = stampNow(context, v.note);
    const { state, entry } = await book.open(
      { ...usual, cautions: [], ...said, name: v.name, ...definedOnly({ volume: v.volume }) },
      logged,
    );
    const after = await holdPoisoned(state, [], logged, context);
    const card = await withUnexplained(await bucketCard(after, context), after, context);
    return {
      ...card,
      title: words.bucket.added(state.no, v.name, after.hold !== undefined),
      // Without a window nothing can be decided.
      ...(after.settings.gravity === undefined && {
        dont: [words.bucket.noWindow, ...(card.dont ?? [])],
        actions: [
          pressToEdit(words.round.setWindow, 'bucket change', { bucket: String(state.no) }),
          ...(card.actions ?? []),
        ],
      }),
      data: { ...card.data, entry: entry.id },
    };
  },
});
