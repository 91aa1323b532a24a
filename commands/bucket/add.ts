import { logs } from '../../src/contract/contract.ts';
import { bucketCard } from '../../src/replies/bucket/bucketCard.ts';
import { bucketOptions } from '../../src/replies/bucket/bucketOptions.ts';
import { bucketProblem } from '../../src/replies/bucket/bucketProblem.ts';
import { bucketSaid } from '../../src/replies/bucket/bucketSaid.ts';
import { cautionsAfter, unexplainedIn } from '../../src/replies/batch/derivedMarks.ts';
import { holdPoisoned } from '../../src/replies/bucket/holdPoisoned.ts';
import { note, text } from '../../src/contract/kinds/texts.ts';
import { usualSolids } from '../../src/studio/settings/usualSolids.ts';
import { days } from '../../src/studio/ids.ts';
import { usualRest } from '../../src/studio/bucket/rests.ts';

/** What a bucket is until its keeper says otherwise (common practice). */
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
    name: { kind: text(60, 'Gull Grey'), needed: true, about: (w) => w.bucket.name },
    ...bucketOptions,
    note: { kind: note, needed: false, about: (w) => w.note },
  },
  async run(v, context) {
    const { words, book, now, member } = context;
    const typed = bucketSaid(v);
    const cautions = await cautionsAfter({ ...typed, name: v.name }, [], context);
    const said = { ...typed, ...(cautions && { cautions }) };
    const problem = bucketProblem({ ...said, name: v.name }, v.volume, await book.buckets(), words);
    if (problem) return { kind: 'refusal', title: problem, data: {} };
    const logged = { at: now, loggedAt: now, by: member, ...(v.note !== undefined && { note: v.note }) };
    const { state, entry } = await book.open(
      {
        ...usual,
        cautions: [],
        ...said,
        name: v.name,
        ...(v.volume !== undefined && { volume: v.volume }),
      },
      logged,
    );
    const after = await holdPoisoned(state, [], logged, context);
    const card = await bucketCard(after, context);
    return {
      ...card,
      cautions: [...(await unexplainedIn(said, context)), ...(card.cautions ?? [])],
      title: words.bucket.added(state.no, v.name, after.hold !== undefined),
      data: { ...card.data, entry: entry.id },
    };
  },
});
