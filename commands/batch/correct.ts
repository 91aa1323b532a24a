import { asks, type Action, type Asking, type Reply } from '../../src/command/contract.ts';
import { bucket } from '../../src/command/kinds/bucket.ts';
import { pick } from '../../src/command/kinds/picks.ts';
import { recipe } from '../../src/command/kinds/recipes.ts';
import { printLine } from '../../src/command/parseLine.ts';
import { recipeOfBucket } from '../../src/command/recipeOfBucket.ts';
import { verdictReply } from '../../src/command/verdictReply.ts';
import { grams } from '../../src/glaze/units.ts';
import type { BucketState } from '../../src/studio/bucketState.ts';
import {
  correctBucket,
  correctionWays,
  type Corrected,
  type CorrectionWay,
} from '../../src/studio/correctBucket.ts';
import { volumeReason } from '../../src/studio/moveAmounts.ts';
import type { Recipe } from '../../src/studio/recipe.ts';
import { scaleRecipe } from '../../src/studio/scaleRecipe.ts';
import type { UnitSystem } from '../../src/studio/studio.ts';
import { handAmount, massText, volumeText } from '../../src/words/measures.ts';
import { pour, type Pour } from '../../src/words/pour.ts';

type Found = Extract<Corrected, { kind: 'amounts' }>;

/** A whole gram is what a studio's scale shows of a batch. */
const scaleStep = grams(1);

/** The one amount of a way, as it stands in an answer and as it is logged. */
const amountOf = (way: CorrectionWay, found: Found, units: UnitSystem) => {
  const { amounts } = found;
  const [value, perLitre] = {
    water: [amounts.waterMl, amounts.waterMlPerLitre],
    'draw-off': [amounts.drawOffMl, amounts.drawOffMlPerLitre],
    dry: [amounts.dryGrams, amounts.dryGramsPerLitre],
    blend: [amounts.blendMl, undefined],
  }[way];
  const unit = way === 'dry' ? 'g' : 'ml';
  const known = value !== undefined || found.expected !== undefined;
  const hand = handAmount(value ?? 0);
  const text = (amount: number) => (unit === 'g' ? massText : volumeText)(handAmount(amount), units);
  const poured = pour(value, known ? undefined : perLitre, units, text) ?? { amount: text(0), each: '' };
  return { poured, hand, typed: `${hand}${unit}`, known };
};

const actions = (
  way: CorrectionWay,
  found: Found,
  { bucket: state, other, units }: { bucket: BucketState; other: BucketState | undefined; units: UnitSystem },
  asking: Asking,
): Action[] => {
  const { words, role } = asking;
  const press = (label: Action['label'], path: string, typed: Record<string, string>): Action => ({
    label,
    line: printLine([path], { bucket: String(state.no), ...typed }, state.seq),
    press: 'run',
  });
  const { poured, hand, typed, known } = amountOf(way, found, units);
  const shown = poured.amount;
  const w = words.verdict;
  const mayPour = known && hand > 0 && (role === 'keeper' || way === 'water' || way === 'blend');
  const done = {
    water: () => press(w.poured(shown), 'added', { what: 'water', amount: typed }),
    'draw-off': () => press(w.drewOff(shown), 'added', { what: 'draw-off', amount: typed }),
    dry: () => press(w.stirredIn(shown), 'added', { what: 'dry', amount: typed }),
    blend: () =>
      press(words.batch.pouredIn(shown), 'added', {
        what: 'glaze',
        amount: typed,
        ...(other && { from: String(other.no) }),
      }),
  };
  return [
    ...(found.first.includes('sieve') ? [press(w.sievedIt(), 'sieved', {})] : []),
    ...(found.first.includes('stir') ? [press(w.stirredIt(), 'stirred', {})] : []),
    ...(mayPour ? [done[way]()] : []),
    {
      label: w.measureIt(),
      line: printLine(['reading'], { bucket: String(state.no) }),
      press: 'edit' as const,
    },
  ].slice(0, 3);
};

const cautions = (way: CorrectionWay, { words }: Asking): NonNullable<Reply['cautions']> => {
  if (way === 'draw-off') return [words.verdict.caution('drawn-water')];
  return way === 'dry' ? [words.verdict.caution('dust')] : [];
};

const data = (
  way: CorrectionWay,
  { amounts, expected, half, first, measured }: Found,
  materials: ReturnType<typeof scaleRecipe> | undefined,
): Reply['data'] => ({
  by: way,
  first,
  half,
  // Nobody knows it for a pail that may hold anything.
  waterMl:
    amounts.waterMlPerLitre !== undefined || amounts.drawOffMlPerLitre !== undefined
      ? null
      : (amounts.waterMl ?? (amounts.drawOffMl === undefined ? 0 : -amounts.drawOffMl)),
  ...(amounts.drawOffMl !== undefined && { drawOffMl: amounts.drawOffMl }),
  powderGrams: amounts.dryGramsPerLitre !== undefined ? null : (amounts.dryGrams ?? 0),
  ...(amounts.dryGrams !== undefined && { dryGrams: amounts.dryGrams }),
  ...(amounts.blendMl !== undefined && { blendMl: amounts.blendMl }),
  ...(amounts.waterMlLeft !== undefined && { waterMlLeft: amounts.waterMlLeft }),
  ...(amounts.waterMlPerLitre !== undefined && { waterMlPerLitre: amounts.waterMlPerLitre }),
  ...(amounts.drawOffMlPerLitre !== undefined && { drawOffMlPerLitre: amounts.drawOffMlPerLitre }),
  ...(amounts.dryGramsPerLitre !== undefined && { dryGramsPerLitre: amounts.dryGramsPerLitre }),
  from: { value: measured.value, u95: measured.u95 },
  gravity: expected ? expected.gravity : null,
  interval: expected ? { low: expected.gravity - expected.u95, high: expected.gravity + expected.u95 } : null,
  volumeL: expected ? expected.volume / 1000 : null,
  ...(materials && { materials: materials.map((one) => ({ ...one })) }),
});

const titleOf = (
  way: CorrectionWay,
  { first, half }: Found,
  { poured, full }: { poured: Pour; full: boolean },
  { words: { correct: w }, role }: Asking,
): Reply['title'] => {
  if (role === 'member' && (way === 'dry' || way === 'draw-off'))
    return full && way === 'dry' ? w.askKeeperFull : w.askKeeper(way, poured, first);
  return full ? w.noRoom : w.firstThen(first, w.correctTitle(way, poured, half));
};

const answered = async (
  way: CorrectionWay,
  found: Found,
  pails: { bucket: BucketState; other: BucketState | undefined },
  recipeOf: Recipe | undefined,
  asking: Asking,
): Promise<Reply> => {
  const { words, book, now, role } = asking;
  const w = words.correct;
  const { bucket: state } = pails;
  const { units } = await book.studio();
  const { poured, hand, known } = amountOf(way, found, units);
  const full = known && hand === 0;
  const materials =
    way === 'dry' && recipeOf && found.amounts.dryGrams !== undefined && hand > 0
      ? scaleRecipe(recipeOf, { total: grams(hand), step: scaleStep })
      : undefined;
  const { expected, measured } = found;
  const said = words.verdict.reason;
  const names = new Map((await book.members()).map(({ id, name }) => [id, name]));
  const setting = {
    units,
    member: (id: Asking['member']) => ({ member: id, name: names.get(id) ?? words.someone }),
  };
  return {
    kind: 'answer',
    title: words.verdict.headline(state.settings.name, titleOf(way, found, { poured, full }, asking)),
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
      ...cautions(way, asking),
      ...(role === 'member' && (way === 'dry' || way === 'draw-off') ? [w.keepersHands] : []),
    ],
    reasons: [
      ...w.correctSteps(way).map((text, i) => words.batch.step(i + 1, text)),
      said(volumeReason({ state, now }), setting),
      ...found.reasons.map((reason) => said(reason, setting)),
    ],
    actions: actions(way, found, { ...pails, units }, asking),
    data: { bucket: state.no, ...data(way, found, materials) },
  };
};

export const correctBatch = asks({
  name: 'correct',
  about: (w) => w.batch.correct,
  who: 'member',
  form: ['bucket', 'by', 'with', 'recipe'],
  options: {
    bucket: { kind: bucket, needed: true, about: (w) => w.batch.bucket },
    by: {
      kind: pick(correctionWays, {
        'drawing-off': 'draw-off',
        off: 'draw-off',
        powder: 'dry',
        'dry-batch': 'dry',
        bucket: 'blend',
      }),
      needed: true,
      about: (w) => w.batch.by,
    },
    with: { kind: bucket, needed: false, about: (w) => w.batch.with },
    recipe: { kind: recipe, needed: false, about: (w) => w.batch.recipeOption },
  },
  async run(v, asking) {
    const { words, now } = asking;
    const w = words.correct;
    const refuse = (title: Reply['title']): Reply => ({ kind: 'refusal', title, data: { by: v.by } });
    if (v.by === 'blend' && !v.with) return refuse(w.needsOther);
    if (v.by === 'blend' && v.with?.no === v.bucket.no) return refuse(words.batch.sameBucket);
    const found = correctBucket(v.bucket, { way: v.by, now, ...(v.with && { other: v.with }) });
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
        return refuse(words.batch.beyondPowder(v.bucket.settings.gravity?.high ?? 0, found.solids));
      case 'needs-volume':
        return refuse(words.batch.needsVolume(found.other ? otherName : name));
      case 'other-unmeasured':
        return refuse(words.batch.unmeasured(otherName));
      case 'other-cannot':
        return refuse(w.otherCannot(otherName, found.other, found.wanted));
      case 'amounts': {
        const own = v.recipe ?? (v.by === 'dry' ? await recipeOfBucket(v.bucket, asking) : undefined);
        return answered(v.by, found, { bucket: v.bucket, other: v.with }, own, asking);
      }
    }
  },
});
