import {
  asks,
  needed,
  optional,
  refusal,
  toRun,
  type Action,
  type Asking,
  type Reply,
} from '../../src/contract/contract.ts';
import { batchSheet } from '../../src/replies/batch/batchSheet.ts';
import { materialGravities, recipe } from '../../src/contract/kinds/recipes.ts';
import { mass, number, statedGravity, volume } from '../../src/contract/kinds/quantities.ts';
import { knownRecipe } from '../../src/replies/batch/knownRecipe.ts';
import { grams, type Grams, type Millilitres } from '../../src/glaze/units.ts';
import { pick } from '../../src/contract/kinds/picks.ts';
import { printLine } from '../../src/contract/parseLine.ts';
import { planBatch } from '../../src/studio/batch/planBatch.ts';
import { bagBatch, roundBatch } from '../../src/studio/batch/roundBatches.ts';
import { weighingOrder } from '../../src/studio/batch/weighingOrder.ts';
import type { UnitSystem } from '../../src/studio/settings/studio.ts';
import { usablePart } from '../../src/studio/verdict/headroom.ts';
import { oddSum, recipeCautions, type Recipe } from '../../src/studio/settings/recipe.ts';
import { toStep, type WeighedMaterial } from '../../src/studio/batch/scaleRecipe.ts';
import type { Words } from '../../src/words/words.ts';

const usualMesh = 80;
/** A message's table holds this many rows beside water, total and pail. */
const mostRows = 22;

/** A row for each base material, the surplus ones folded into one row; then a row for each addition over the base. */
const materialFacts = (
  materials: readonly WeighedMaterial[],
  w: Words['batch'],
): NonNullable<Reply['facts']> => {
  const base = materials.filter(({ addition }) => !addition);
  const over = materials.filter(({ addition }) => addition);
  const most = over.length > 0 ? mostRows - 1 : mostRows;
  const shown = base.length > most ? most - 1 : most;
  const folded = base.slice(shown);
  return [
    ...base.slice(0, shown).map((one) => ({ label: [{ said: one.material }], text: w.grams(one.grams) })),
    ...(folded.length > 0 ? [{ label: [w.factMore], text: w.weighedPart(folded) }] : []),
    ...(over.length > 0 ? [{ label: [w.factOver], text: w.weighedPart(over) }] : []),
  ];
};

const amountWanted = (volume?: Millilitres, powder?: Grams, of?: 'all' | 'base') => {
  if (volume !== undefined) return powder === undefined ? { volume } : undefined;
  return powder && (of === 'base' ? { base: powder } : { powder });
};

/** Batches near this one that come out round, or use up a bag. */
const otherBatches = (
  of: 'all' | 'base' = 'all',
  recipe: Recipe,
  { materials, powder }: { materials: readonly WeighedMaterial[]; powder: Grams },
  units: UnitSystem,
  { words: { batch: w }, typed }: Asking,
): Action[] => {
  const { volume: _volume, pail: _pail, ...same } = typed;
  const planned = (said: string): string => printLine(['batch', 'plan'], { ...same, powder: said });
  const base = grams(materials.reduce((sum, one) => sum + (one.addition ? 0 : one.grams), 0));
  const weighed = of === 'base' ? base : powder;
  const round = roundBatch(weighed, units);
  const bag = bagBatch(recipe, { weight: weighed, of }, units);
  return [
    ...(round ? [toRun(w.roundPowder(round, of), planned(round))] : []),
    ...(bag ? [toRun(w.wholeBag(bag.bag, bag.material), planned(`${Number(bag.powder.toFixed(1))}g`))] : []),
  ];
};

export const planNewBatch = asks({
  name: 'plan',
  about: (w) => w.batch.plan,
  who: 'member',
  form: ['recipe', 'volume', 'gravity', 'pail', 'gravities'],
  options: {
    recipe: needed(recipe, (w) => w.batch.recipeOption),
    volume: optional(volume(10, 1_000_000, 'l', '15l'), (w) => w.batch.volume),
    powder: optional(mass(1, 1_000_000, '5kg'), (w) => w.batch.powder),
    of: optional(pick(['all', 'base']), (w) => w.batch.of),
    gravity: needed(statedGravity, (w) => w.batch.gravity),
    pail: optional(volume(100, 250_000, 'l', '19l'), (w) => w.batch.pail),
    mesh: optional(number(10, 500, '80'), (w) => w.batch.mesh),
    step: optional(mass(0.01, 100, '1g'), (w) => w.batch.scaleStep),
    gravities: optional(materialGravities, (w) => w.batch.gravities),
  },
  async run(v, asking) {
    const { words, book, now } = asking;
    const w = words.batch;
    const wanted = amountWanted(v.volume, v.powder, v.of);
    if (!wanted) return refusal(w.volumeOrPowder);
    if (v.of === 'base' && !('base' in wanted)) return refusal(w.ofNeedsPowder);
    const step = v.step ?? grams(1);
    const known = await knownRecipe(v.recipe, v.gravities, ['batch', 'plan'], asking);
    if (!known.ok) return known.reply;
    const { recipe: used, particleGravity } = known;
    const plan = planBatch({ recipe: used, particleGravity, gravity: v.gravity, amount: wanted, step });
    switch (plan.kind) {
      case 'not-glaze':
        return refusal(w.notGlaze(v.gravity));
      case 'beyond-powder':
        return refusal(w.beyondPowder(v.gravity, plan.particleGravity));
      case 'paste':
        return refusal(w.paste(v.gravity, plan.fraction));
      case 'too-small':
        return refusal(w.tooSmall(plan.step));
      case 'plan': {
        const { units, zone } = await book.studio();
        const { powder, volume: made, materials } = plan;
        const water = toStep(plan.water, step);
        const first = toStep(grams(0.9 * water), step);
        const back = toStep(grams(water - first), step);
        const name = v.recipe.name ?? w.newBatch;
        const title = w.planTitle(powder, water, made, v.gravity, units);
        const order = weighingOrder(materials, known.materials);
        const steps = w.planSteps({ first, back }, order, v.mesh ?? usualMesh);
        const sum = oddSum(used);
        const cautions = [
          words.verdict.caution('dust'),
          ...(known.unexplained.length > 0 ? [words.recipe.unexplained(known.unexplained)] : []),
          ...recipeCautions(used, known.materials)
            .filter(({ caution }) => caution !== 'silica dust')
            .map((one) => w.materialCaution(one.caution, one.materials)),
          ...(made >= 15_000 ? [words.verdict.caution('lifting')] : []),
        ];
        return {
          kind: 'answer',
          title,
          facts: [
            { label: [w.factWater], text: w.waterFact(water, units) },
            ...materialFacts(materials, w),
            { label: [w.factTotal], text: w.grams(powder) },
            ...(v.pail === undefined
              ? []
              : [{ label: [w.factPail], text: w.fits(made, v.pail, usablePart * v.pail, units) }]),
          ],
          cautions,
          actions: otherBatches(v.of, used, plan, units, asking),
          reasons: [
            ...(sum === undefined ? [] : [words.recipe.oddSum(sum)]),
            ...steps.map((text, i) => w.step(i + 1, text)),
            w.solidsOfMix(particleGravity),
            w.sheet,
          ],
          file: batchSheet({ name, title, materials, water, powder, steps, cautions }, { words, now, zone }),
          data: {
            waterMl: plan.water,
            powderGrams: powder,
            gravity: v.gravity,
            volumeL: made / 1000,
            solidsGravity: particleGravity,
            materials: materials.map((one) => ({ ...one })),
            ...(v.pail !== undefined && { fits: made <= v.pail }),
          },
        };
      }
    }
  },
});
