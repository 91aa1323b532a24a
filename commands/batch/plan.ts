import { asks, type Reply } from '../../src/contract/contract.ts';
import { batchSheet } from '../../src/replies/batch/batchSheet.ts';
import { materialGravities, recipe } from '../../src/contract/kinds/recipes.ts';
import { mass, number, statedGravity, volume } from '../../src/contract/kinds/quantities.ts';
import { knownRecipe } from '../../src/replies/batch/knownRecipe.ts';
import { gravity, grams } from '../../src/glaze/units.ts';
import { planBatch } from '../../src/studio/batch/planBatch.ts';
import { usablePart } from '../../src/studio/verdict/headroom.ts';
import { recipeCautions } from '../../src/studio/settings/recipe.ts';

const usualMesh = 80;
/** With water, total and pail beside them, as many rows as a message's table holds. */
const mostRows = 22;

export const planNewBatch = asks({
  name: 'plan',
  about: (w) => w.batch.plan,
  who: 'member',
  form: ['recipe', 'volume', 'gravity', 'pail', 'gravities'],
  options: {
    recipe: { kind: recipe, needed: true, about: (w) => w.batch.recipeOption },
    volume: { kind: volume(10, 1_000_000, 'l', '15l'), needed: false, about: (w) => w.batch.volume },
    powder: { kind: mass(1, 1_000_000, '5kg'), needed: false, about: (w) => w.batch.powder },
    gravity: { kind: statedGravity, needed: true, about: (w) => w.batch.gravity },
    pail: { kind: volume(100, 250_000, 'l', '19l'), needed: false, about: (w) => w.batch.pail },
    mesh: { kind: number(10, 500, '80'), needed: false, about: (w) => w.batch.mesh },
    step: { kind: mass(0.01, 100, '1g'), needed: false, about: (w) => w.batch.scaleStep },
    gravities: { kind: materialGravities, needed: false, about: (w) => w.batch.gravities },
  },
  async run(v, asking) {
    const { words, book, now } = asking;
    const w = words.batch;
    const refuse = (title: Reply['title']): Reply => ({ kind: 'refusal', title, data: {} });
    const wanted =
      v.volume !== undefined && v.powder === undefined
        ? { volume: v.volume }
        : v.powder !== undefined && v.volume === undefined
          ? { powder: v.powder }
          : undefined;
    if (!wanted) return refuse(w.volumeOrPowder);
    const known = knownRecipe(v.recipe, v.gravities, ['batch', 'plan'], asking);
    if (!known.ok) return known.reply;
    const { particleGravity } = known;
    const plan = planBatch({
      recipe: known.recipe,
      particleGravity,
      gravity: gravity(v.gravity),
      amount: wanted,
      step: v.step ?? grams(1),
    });
    switch (plan.kind) {
      case 'not-glaze':
        return refuse(w.notGlaze(v.gravity));
      case 'beyond-powder':
        return refuse(w.beyondPowder(v.gravity, plan.particleGravity));
      case 'paste':
        return refuse(w.paste(v.gravity, plan.fraction));
      case 'too-small':
        return refuse(w.tooSmall(plan.step));
      case 'plan': {
        const { units, zone } = await book.studio();
        const { powder, water, volume: made, materials } = plan;
        const name = v.recipe.name ?? w.newBatch;
        const title = w.planTitle(powder, water, made, v.gravity, units);
        const steps = w.planSteps(water, v.mesh ?? usualMesh);
        const cautions = [
          words.verdict.caution('dust'),
          ...recipeCautions(known.recipe)
            .filter(({ caution }) => caution !== 'silica dust')
            .map((one) => w.materialCaution(one.caution, one.materials)),
          ...(made >= 15_000 ? [words.verdict.caution('lifting')] : []),
        ];
        return {
          kind: 'answer',
          title,
          facts: [
            { label: [w.factWater], text: w.waterFact(water, units) },
            ...(materials.length > mostRows ? materials.slice(0, mostRows - 1) : materials).map((one) => ({
              label: w.material(one),
              text: w.grams(one.grams),
            })),
            ...(materials.length > mostRows
              ? [{ label: [w.factMore], text: w.weighed(materials.slice(mostRows - 1)) }]
              : []),
            { label: [w.factTotal], text: w.grams(powder) },
            ...(v.pail === undefined
              ? []
              : [{ label: [w.factPail], text: w.fits(made, v.pail, usablePart * v.pail, units) }]),
          ],
          cautions,
          reasons: [
            ...steps.map((text, i) => w.step(i + 1, text)),
            w.solidsOfMix(particleGravity),
            w.sheet(),
          ],
          file: batchSheet({ name, title, materials, water, powder, steps, cautions }, { words, now, zone }),
          data: {
            waterMl: water,
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
