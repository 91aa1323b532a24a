import { bucketCard } from '../../src/replies/bucket/bucketCard.ts';
import { bucketOptions } from '../../src/replies/bucket/bucketOptions.ts';
import { bucketProblem } from '../../src/replies/bucket/bucketProblem.ts';
import { holdPoisoned } from '../../src/replies/bucket/holdPoisoned.ts';
import { bucketSaid } from '../../src/replies/bucket/bucketSaid.ts';
import { logs } from '../../src/contract/contract.ts';
import { bucket } from '../../src/contract/kinds/bucket.ts';
import { note, text } from '../../src/contract/kinds/texts.ts';
import type { BucketSettings } from '../../src/studio/settings/bucketSettings.ts';

export const changeBucket = logs({
  name: 'change',
  about: (w) => w.bucket.change,
  who: 'keeper',
  options: {
    bucket: { kind: bucket, needed: true, about: (w) => w.reading.bucket },
    name: { kind: text(60, 'Gull Grey'), needed: false, about: (w) => w.bucket.name },
    ...bucketOptions,
    note: { kind: note, needed: false, about: (w) => w.note },
  },
  async run(v, context) {
    const { words, book, now, member } = context;
    const said: Partial<BucketSettings> = {
      ...bucketSaid(v),
      ...(v.name !== undefined && { name: v.name }),
    };
    if (Object.keys(said).length === 0 && v.volume === undefined)
      return { kind: 'refusal', title: words.bucket.nothingToChange, data: {} };
    const others = (await book.buckets()).filter(({ no }) => no !== v.bucket.no);
    const after = { ...v.bucket.settings, ...said };
    const names = {
      ...(said.name !== undefined && { name: said.name }),
      ...(said.nick !== undefined && { nick: said.nick }),
    };
    const { name: _name, nick: _nick, ...rest } = after;
    const problem = bucketProblem({ ...rest, ...names }, v.volume, others, words);
    if (problem) return { kind: 'refusal', title: problem, data: {} };
    const logged = { at: now, loggedAt: now, by: member, ...(v.note !== undefined && { note: v.note }) };
    const { state: changed, entry } = await book.log(
      v.bucket.no,
      { kind: 'change', settings: said, ...(v.volume !== undefined && { volume: v.volume }) },
      logged,
    );
    const state = await holdPoisoned(changed, v.bucket.settings.cautions, logged, context);
    const card = await bucketCard(state, context);
    return {
      ...card,
      title: words.bucket.changed(state.settings.name, state.hold !== changed.hold),
      data: { ...card.data, entry: entry.id },
    };
  },
});
