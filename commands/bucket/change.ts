import { bucketCard } from '../../src/replies/bucket/bucketCard.ts';
import { bucketOptions } from '../../src/replies/bucket/bucketOptions.ts';
import { bucketProblem } from '../../src/replies/bucket/bucketProblem.ts';
import { cautionsAfter, unexplainedIn } from '../../src/replies/batch/derivedMarks.ts';
import { holdPoisoned } from '../../src/replies/bucket/holdPoisoned.ts';
import { bucketSaid } from '../../src/replies/bucket/bucketSaid.ts';
import { logs, type Reply } from '../../src/contract/contract.ts';
import { bucket } from '../../src/contract/kinds/bucket.ts';
import { note, text } from '../../src/contract/kinds/texts.ts';
import type { BucketSettings } from '../../src/studio/settings/bucketSettings.ts';
import { joinGlaze } from '../../src/studio/bucket/joinGlaze.ts';

export const changeBucket = logs({
  name: 'change',
  about: (w) => w.bucket.change,
  who: 'keeper',
  options: {
    bucket: { kind: bucket, needed: true, about: (w) => w.reading.bucket },
    name: { kind: text(60, 'Gull Grey'), needed: false, about: (w) => w.bucket.name },
    ...bucketOptions,
    'same-as': { kind: bucket, needed: false, about: (w) => w.bucket.sameAs },
    note: { kind: note, needed: false, about: (w) => w.note },
  },
  async run(v, context) {
    const { words, book, now, member } = context;
    const refuse = (title: Reply['title']): Reply => ({ kind: 'refusal', title, data: {} });
    const same = v['same-as'];
    if (same?.no === v.bucket.no) return refuse(words.bucket.sameAsItself);
    if (same && v.glaze !== undefined) return refuse(words.bucket.sameAsAndGlaze);
    if (same?.apart !== undefined) return refuse(words.bucket.sameAsApart(same.settings.name, same.no));
    const joined = same && joinGlaze(v.bucket, same);
    const typed: Partial<BucketSettings> = {
      ...joined?.one,
      ...bucketSaid(v),
      ...(v.name !== undefined && { name: v.name }),
    };
    const cautions = await cautionsAfter(typed, v.bucket.settings.cautions, context);
    const said = { ...typed, ...(cautions && { cautions }) };
    if (Object.keys(said).length === 0 && v.volume === undefined) return refuse(words.bucket.nothingToChange);
    const others = (await book.buckets()).filter(({ no }) => no !== v.bucket.no);
    const after = { ...v.bucket.settings, ...said };
    const anew = {
      ...(said.name !== undefined && { name: said.name }),
      ...(said.nick !== undefined && { nick: said.nick }),
      ...(said.cautions && { cautions: said.cautions }),
    };
    const { name: _name, nick: _nick, cautions: _cautions, ...rest } = after;
    const problem = bucketProblem({ ...rest, ...anew }, v.volume, others, words);
    if (problem) return refuse(problem);
    const logged = { at: now, loggedAt: now, by: member, ...(v.note !== undefined && { note: v.note }) };
    const { state: changed, entry } = await book.log(
      v.bucket.no,
      { kind: 'change', settings: said, ...(v.volume !== undefined && { volume: v.volume }) },
      logged,
    );
    if (same && joined?.other)
      await holdPoisoned(
        (await book.log(same.no, { kind: 'change', settings: joined.other }, logged)).state,
        same.settings.cautions,
        logged,
        context,
      );
    const state = await holdPoisoned(changed, v.bucket.settings.cautions, logged, context);
    const card = await bucketCard(state, context);
    return {
      ...card,
      cautions: [...(await unexplainedIn(typed, context)), ...(card.cautions ?? [])],
      title: words.bucket.changed(state.settings.name, state.hold !== changed.hold),
      ...(same && { reasons: [words.bucket.sameNow(same.settings.name), ...(card.reasons ?? [])] }),
      data: { ...card.data, entry: entry.id },
    };
  },
});
