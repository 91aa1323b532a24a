import { definedOnly } from '../../src/definedOnly.ts';
import { asks, needed, optional, refusal, type Asking, type Reply } from '../../src/contract/contract.ts';
import { broughtByGlaze } from '../../src/replies/bucket/broughtByGlaze.ts';
import { mixedCautions } from '../../src/replies/bucket/mixedCautions.ts';
import { bucket } from '../../src/contract/kinds/bucket.ts';
import { pick } from '../../src/contract/kinds/picks.ts';
import { recipe } from '../../src/contract/kinds/recipes.ts';
import { correctionActions, correctionAmount } from '../../src/replies/batch/correctionActions.ts';
import { recipeOfBucket } from '../../src/replies/batch/recipeOfBucket.ts';
import { verdictReply } from '../../src/replies/verdict/verdictReply.ts';
import { grams } from '../../src/glaze/units.ts';
import type { BucketState } from '../../src/studio/bucket/bucketState.ts';
import {
  correctBucket,
  correctionWays,
  type CorrectionFound as Found,
  type CorrectionWay,
} from '../../src/studio/batch/correctBucket.ts';
import { volumeReason } from '../../src/studio/verdict/moveAmounts.ts';
import { handlingCautions } from '../../src/replies/bucket/handlingCautions.ts';
import type { Recipe } from '../../src/studio/settings/recipe.ts';
import { scaleRecipe } from '../../src/studio/batch/scaleRecipe.ts';
import type { UnitSystem } from '../../src/studio/settings/studio.ts';
import type { Pour } from '../../src/words/text/pour.ts';
import { choiceWords } from '../../src/words/desk/choiceWords.ts';

/** A studio's batch scale shows whole grams. */
const scaleStep = grams(1);

const correctionData = (
  way: CorrectionWay,
  { amounts, expected, half, first, measured }: Found,
  materials: ReturnType<typeof scaleRecipe> | undefined,
): Reply['data'] => {
  const { waterMl, drawOffMl, dryGrams, blendMl, ladleMl, fitsMl, waterMlLeft } = amounts;
  const { waterMlPerLitre, drawOffMlPerLitre, dryGramsPerLitre } = amounts;
  return {
    by: way,
    first,
    half,
    // A pail without stated limits has no such amount.
    waterMl:
      waterMlPerLitre !== undefined || drawOffMlPerLitre !== undefined
        ? null
        : (waterMl ?? (drawOffMl === undefined ? 0 : -drawOffMl)),
    ...definedOnly({ drawOffMl }),
    powderGrams: dryGramsPerLitre !== undefined ? null : (dryGrams ?? 0),
    ...definedOnly({ dryGrams, blendMl, ladleMl, fitsMl, waterMlLeft }),
    ...definedOnly({ waterMlPerLitre, drawOffMlPerLitre, dryGramsPerLitre }),
    from: { value: measured.value, u95: measured.u95 },
    gravity: expected ? expected.gravity : null,
    interval: expected
      ? { low: expected.gravity - expected.u95, high: expected.gravity + expected.u95 }
      : null,
    volumeL: expected ? expected.volume.value / 1000 : null,
    ...(materials && { materials: materials.map((one) => ({ ...one })) }),
  };
};

interface TitleParts {
  poured: Pour;
  full: boolean;
  other: string;
  units: UnitSystem;
}

const titleOf = (
  way: CorrectionWay,
  { first, half, amounts, falls }: Found,
  { poured, full, other, units }: TitleParts,
  { words, role }: Asking,
): Reply['title'] => {
  const w = words.correct;
  if (role === 'member' && (way === 'dry' || way === 'draw-off'))
    return full && way === 'dry' ? w.askKeeperFull : w.firstThen(first, w.askKeeper(way, poured));
  const { blendMl, ladleMl, fitsMl } = amounts;
  if (blendMl !== undefined && ladleMl !== undefined) {
    const split = { ladle: ladleMl, pour: blendMl, fits: fitsMl ?? 0 };
    return w.firstThen(first, w.ladleFirst(other, split, units));
  }
  if (amounts.waterMlLeft !== undefined) return w.firstThen(first, words.verdict.overfull(amounts, units));
  if (full) return w.noRoom;
  const title = w.correctTitle(way, poured, { half, other });
  return w.firstThen(first, falls ? w.falls(falls, other, title) : title);
};

const correctionReply = async (
  way: CorrectionWay,
  found: Found,
  pails: { bucket: BucketState; other: BucketState | undefined },
  recipeOf: Recipe | undefined,
  asking: Asking,
): Promise<Reply> => {
  const { words, book, now, role } = asking;
  const w = words.correct;
  const { bucket: state } = pails;
  const studio = await book.studio();
  const { units } = studio;
  const { poured, hand, known } = correctionAmount(way, found, studio);
  const full = known && hand === 0;
  const saying = { poured, full, other: pails.other?.settings.name ?? '', units };
  const materials =
    way === 'dry' && recipeOf && found.amounts.dryGrams !== undefined && hand > 0
      ? scaleRecipe(recipeOf, { total: grams(hand), step: scaleStep })
      : undefined;
  const { expected, measured } = found;
  const brings = pails.other && broughtByGlaze(state, pails.other, words);
  const said = words.verdict.reason;
  const names = new Map((await book.members()).map(({ id, name }) => [id, name]));
  const setting = {
    measures: studio,
    member: (id: Asking['member']) => ({ member: id, name: names.get(id) ?? words.someone }),
  };
  return {
    kind: 'answer',
    title: words.verdict.headline(state.settings.name, titleOf(way, found, saying, asking)),
    facts: [
      {
        label: [w.factNow],
        text: words.verdict.gravityFact(measured.value, measured.u95, state.settings.gravity ?? null),
      },
      ...(expected && !full
        ? [
            {
              label: [w.factExpected],
              text: w.expected(expected.gravity, expected.u95, expected.volume, units),
            },
          ]
        : []),
      ...(materials ? [{ label: [words.batch.factMaterials], text: words.batch.weighed(materials) }] : []),
    ],
    dont: found.half ? [words.verdict.dont('all-at-once')] : [],
    cautions: [
      ...handlingCautions(way, state, words.verdict),
      ...(brings
        ? mixedCautions(state, brings, { words, ...definedOnly({ source: pails.other }), glaze: true })
        : []),
      ...(role === 'member' && (way === 'dry' || way === 'draw-off') ? [w.keepersHands] : []),
    ],
    reasons: [
      ...w.correctSteps(way).map((text, i) => words.batch.step(i + 1, text)),
      said(volumeReason({ state, now }), setting),
      ...found.reasons.map((reason) => said(reason, setting)),
    ],
    actions: correctionActions(way, found, { ...pails, measures: studio }, asking),
    data: { bucket: state.no, ...correctionData(way, found, materials) },
  };
};

export const correctBatch = asks({
  name: 'correct',
  about: (w) => w.batch.correct,
  who: 'member',
  form: ['bucket', 'by', 'with', 'recipe'],
  options: {
    bucket: needed(bucket, (w) => w.batch.bucket),
    by: needed(
      pick(
        correctionWays,
        {
          'drawing-off': 'draw-off',
          off: 'draw-off',
          'lid-off': 'evaporate',
          evaporation: 'evaporate',
          powder: 'dry',
          'dry-batch': 'dry',
          bucket: 'blend',
        },
        choiceWords.way,
      ),
      (w) => w.batch.by,
    ),
    with: optional(bucket, (w) => w.batch.with),
    recipe: optional(recipe, (w) => w.batch.recipeOption),
  },
  async run(v, asking) {
    const { words, now } = asking;
    const w = words.correct;
    const refuse = (title: Reply['title']): Reply => refusal(title, { by: v.by });
    if (v.by === 'blend' && !v.with) return refuse(w.needsOther);
    if (v.by === 'blend' && v.with?.no === v.bucket.no) return refuse(words.batch.sameBucket);
    const found = correctBucket(v.bucket, { way: v.by, now, ...definedOnly({ other: v.with }) });
    const name = v.bucket.settings.name;
    const otherName = v.with?.settings.name ?? '';
    switch (found.kind) {
      case 'blocked':
        return { ...(await verdictReply(v.bucket, asking)), kind: 'refusal' };
      case 'in-window':
        return {
          kind: 'answer',
          title: words.verdict.headline(
            name,
            w.inWindow(
              found.measured.value,
              found.measured.u95,
              v.bucket.settings.gravity ?? { low: 0, high: 0 },
            ),
          ),
          data: { by: v.by, waterMl: 0, powderGrams: 0, gravity: found.measured.value },
        };
      case 'wrong-way':
        return refuse(w.wrongWay(found.band, v.by));
      case 'gel':
        return refuse(w.gel);
      case 'beyond-powder':
        return refuse(words.batch.beyondPowder(v.bucket.settings.gravity?.high ?? 0, found.particleGravity));
      case 'needs-volume':
        return refuse(words.batch.needsVolume(found.other ? otherName : name));
      case 'other-unmeasured':
        return refuse(words.batch.unmeasured(otherName));
      case 'other-cannot':
        return refuse(w.otherCannot(otherName, found.other, found.wanted));
      case 'amounts': {
        const own = v.recipe ?? (v.by === 'dry' ? await recipeOfBucket(v.bucket, asking) : undefined);
        return correctionReply(v.by, found, { bucket: v.bucket, other: v.with }, own, asking);
      }
    }
  },
});
