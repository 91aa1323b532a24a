import { definedOnly } from '../src/definedOnly.ts';
import { logs, needed, optional, refusal } from '../src/contract/contract.ts';
import { entryStamp } from '../src/contract/entryStamp.ts';
import { broughtByGlaze } from '../src/replies/bucket/broughtByGlaze.ts';
import { broughtBoth, broughtByNote } from '../src/replies/bucket/broughtByNote.ts';
import { glazeSource } from '../src/contract/kinds/glazeSource.ts';
import { pick, yesNo } from '../src/contract/kinds/picks.ts';
import { amount, mass, statedGravity } from '../src/contract/kinds/quantities.ts';
import { bucketOption, whenAndNote } from '../src/contract/kinds/usualOptions.ts';
import { mixedCautions } from '../src/replies/bucket/mixedCautions.ts';
import { verdictReply } from '../src/replies/verdict/verdictReply.ts';
import { chemistryCautions } from '../src/replies/bucket/chemistryCautions.ts';
import { askDose } from '../src/replies/bucket/askDose.ts';
import { doubtfulDose } from '../src/studio/batch/doubtfulDose.ts';
import { handlingCautions } from '../src/replies/bucket/handlingCautions.ts';
import { readAddition, type SaidAddition } from '../src/studio/batch/readAddition.ts';
import { volumeNow } from '../src/studio/bucket/volumeNow.ts';
import { choiceWords } from '../src/words/desk/choiceWords.ts';

export const added = logs({
  name: 'added',
  about: (w) => w.added.about,
  who: 'member',
  form: ['bucket', 'what', 'amount', 'note'],
  options: {
    bucket: bucketOption,
    what: needed(
      pick(
        ['water', 'dry', 'flocculant', 'deflocculant', 'glaze', 'other', 'draw-off', 'taken'],
        {
          'dry-batch': 'dry',
          powder: 'dry',
          batch: 'dry',
          epsom: 'flocculant',
          'epsom-salt': 'flocculant',
          'drew-off': 'draw-off',
          'drawn-off': 'draw-off',
          'water-off': 'draw-off',
          slurry: 'glaze',
          'took-out': 'taken',
          out: 'taken',
        },
        choiceWords.moved,
      ),
      (w) => w.added.what,
    ),
    amount: optional(amount, (w) => w.added.amount),
    from: optional(glazeSource, (w) => w.added.from),
    gravity: optional(statedGravity, (w) => w.added.gravity),
    strength: optional(mass(0.01, 1500, '100g'), (w) => w.added.strength),
    remake: optional(yesNo, (w) => w.added.remake),
    sure: optional(yesNo, (w) => w.added.sure),
    ...whenAndNote,
  },
  async run(v, context) {
    const { words, book, role } = context;
    const w = words.added;
    if (v.gravity !== undefined && (v.gravity < 1 || v.gravity > 2.5))
      return refusal(words.option.gravityOutside(String(v.gravity)));
    const from = v.from === 'own' ? undefined : v.from;
    if (from?.no === v.bucket.no) return refusal(w.sameBucket);
    const logged = entryStamp(context, v);
    // The logbook does not say how full the pail was before this entry.
    const held = v.bucket.foldedTo <= logged.at ? volumeNow(v.bucket, logged.at) : undefined;
    const said: SaidAddition = {
      what: v.what,
      bucket: v.bucket,
      ...definedOnly({ held, amount: v.amount, from, gravity: v.gravity, saltPerLitre: v.strength }),
      ...(v.from === 'own' && { own: true as const }),
    };
    const found = readAddition(said);
    if (!found.ok) {
      const { units } = await book.studio();
      return refusal(w.problem(found.why, context.typed['amount'] ?? '', units));
    }
    const doubt = v.sure === true ? undefined : doubtfulDose(said);
    if (doubt) return askDose(doubt, context);
    const goesIn = v.what !== 'draw-off' && v.what !== 'taken';
    const brings = broughtBoth(
      v.what === 'glaze' || (from && goesIn) ? broughtByGlaze(v.bucket, v.from, words) : undefined,
      goesIn ? broughtByNote(v.what, v.note, v.bucket, words) : undefined,
    );
    const chemistry = await chemistryCautions(v.bucket, v.note, context);
    const { state, entry } = await book.log(
      v.bucket.no,
      { kind: 'addition', added: found.added, ...(v.remake && { remake: true }), ...definedOnly({ brings }) },
      logged,
    );
    const other =
      from && found.taken
        ? await book.log(from.no, { kind: 'addition', added: found.taken }, logged)
        : undefined;
    const mixed = { words, ...definedOnly({ source: from }), glaze: v.what === 'glaze' };
    return verdictReply(state, context, {
      entry,
      before: v.bucket,
      reasons: [
        ...(other ? [w.alsoTaken(other.entry.id, from?.settings.name ?? '')] : []),
        ...(found.added.what === 'flocculant' && v.strength === undefined ? [w.asSaturated] : []),
      ],
      cautions: [
        ...(brings ? mixedCautions(v.bucket, brings, mixed) : []),
        ...handlingCautions(v.what, v.bucket, words.verdict),
        ...chemistry,
        ...(role === 'member' && (v.what === 'dry' || v.what === 'deflocculant') ? [w.keepersHands] : []),
      ],
      ...(other && { data: { alsoEntry: other.entry.id } }),
    });
  },
});
