import { definedOnly } from '../../src/definedOnly.ts';
import { bucketCard } from '../../src/replies/bucket/bucketCard.ts';
import { bucketOptions } from '../../src/replies/bucket/bucketOptions.ts';
import { bucketProblem } from '../../src/replies/bucket/bucketProblem.ts';
import { cautionsAfter, withUnexplained } from '../../src/replies/batch/derivedMarks.ts';
import { holdPoisoned } from '../../src/replies/bucket/holdPoisoned.ts';
import { pouredOn } from '../../src/replies/bucket/pouredOn.ts';
import { markDoubt } from '../../src/replies/batch/markDoubt.ts';
import { yesNo } from '../../src/contract/kinds/picks.ts';
import { bucketCleared, bucketSaid } from '../../src/replies/bucket/bucketSaid.ts';
import { logs, optional, refusal } from '../../src/contract/contract.ts';
import { bucket } from '../../src/contract/kinds/bucket.ts';
import { name } from '../../src/contract/kinds/texts.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';
import { bucketOption, noteOption } from '../../src/contract/kinds/usualOptions.ts';
import type { BucketSettings } from '../../src/studio/settings/bucketSettings.ts';
import { poisonIn } from '../../src/studio/bucket/bucketHazards.ts';
import { joinGlaze } from '../../src/studio/bucket/sameGlaze.ts';

export const changeBucket = logs({
  name: 'change',
  about: (w) => w.bucket.change,
  who: 'keeper',
  options: {
    bucket: bucketOption,
    name: optional(name(60, 'Gull Grey'), (w) => w.bucket.name),
    ...bucketOptions,
    'same-as': optional(bucket, (w) => w.bucket.sameAs),
    sure: optional(yesNo, (w) => w.bucket.sureMarks),
    note: noteOption,
  },
  async run(v, context) {
    const { words, book } = context;
    const same = v['same-as'];
    if (same?.no === v.bucket.no) return refusal(words.bucket.sameAsItself);
    if (same && v.glaze !== undefined) return refusal(words.bucket.sameAsAndGlaze);
    if (same?.apart !== undefined) return refusal(words.bucket.sameAsApart(same.settings.name, same.no));
    const joined = same && joinGlaze(v.bucket, same);
    const typed: Partial<BucketSettings> = {
      ...joined?.one,
      ...bucketSaid(v),
      ...definedOnly({ name: v.name }),
    };
    const cautions = await cautionsAfter(typed, v.bucket.settings.cautions, context);
    const said = { ...typed, ...definedOnly({ cautions }) };
    const cleared = bucketCleared(v);
    if (Object.keys(said).length === 0 && cleared.length === 0 && v.volume === undefined)
      return refusal(words.bucket.nothingToChange);
    const others = (await book.buckets()).filter(({ no }) => no !== v.bucket.no);
    const after = { ...v.bucket.settings, ...said };
    const anew = definedOnly({ name: said.name, nick: said.nick, cautions: said.cautions });
    const { name: _name, nick: _nick, cautions: _cautions, ...rest } = after;
    const { units } = await book.studio();
    const problem = bucketProblem({ ...rest, ...anew }, v.volume, others, units, words);
    if (problem) return refusal(problem);
    const setsMarks = [said.cautions, said.recipe, said.glaze, said.name].some((one) => one !== undefined);
    const doubt =
      setsMarks &&
      (await markDoubt(
        {
          path: 'bucket change',
          listed: v.cautions,
          after,
          marks: [...v.bucket.settings.cautions, ...(same?.settings.cautions ?? [])],
          mixed: v.bucket.brought !== undefined,
          sure: v.sure === true,
          note: v.note,
        },
        context,
      ));
    if (doubt) return doubt;
    const logged = stampNow(context, v.note);
    const { state: changed, entry } = await book.log(
      v.bucket.no,
      {
        kind: 'change',
        settings: said,
        ...(cleared.length > 0 && { cleared }),
        ...definedOnly({ volume: v.volume }),
      },
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
    const card = await withUnexplained(await bucketCard(state, context), state, context);
    const poisonGone = poisonIn(
      v.bucket.settings.cautions.filter((one) => !state.settings.cautions.includes(one)),
    );
    const poured = await pouredOn(state, v.bucket.settings.cautions, context);
    return {
      ...card,
      cautions: [
        ...poured.cautions,
        ...(poisonGone === undefined ? [] : [words.bucket.poisonTakenAway(poisonGone)]),
        ...(card.cautions ?? []),
      ],
      actions: poured.actions,
      title: words.bucket.changed(state.settings.name, state.hold !== changed.hold),
      ...(same && { reasons: [words.bucket.sameNow(same.settings.name), ...(card.reasons ?? [])] }),
      data: { ...card.data, entry: entry.id },
    };
  },
});
