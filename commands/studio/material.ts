import { gravity } from '../../src/glaze/units.ts';
import { hazardsInName } from '../../src/glaze/materials/hazardWords.ts';
import { logs, type Reply } from '../../src/contract/contract.ts';
import { hazards, material } from '../../src/contract/kinds/material.ts';
import { yesNo } from '../../src/contract/kinds/picks.ts';
import { number } from '../../src/contract/kinds/quantities.ts';
import { markBuckets } from '../../src/replies/batch/markBuckets.ts';
import { normalizedName } from '../../src/studio/normalizedName.ts';
import { text } from '../../src/contract/kinds/texts.ts';

export const setMaterial = logs({
  name: 'material',
  about: (w) => w.recipe.materialAbout,
  who: 'keeper',
  form: ['name', 'like', 'hazard', 'soluble', 'particle-gravity'],
  options: {
    name: { kind: text(60, 'moon dust'), needed: true, about: (w) => w.recipe.materialName },
    like: { kind: material, needed: false, about: (w) => w.recipe.like },
    hazard: { kind: hazards, needed: false, about: (w) => w.recipe.hazard },
    soluble: { kind: yesNo, needed: false, about: (w) => w.recipe.soluble },
    'particle-gravity': {
      kind: number(1.1, 12, '2.6'),
      needed: false,
      about: (w) => w.recipe.particleGravity,
    },
  },
  async run(v, context) {
    const { words, book, now, member } = context;
    const w = words.recipe;
    const refuse = (title: Reply['title']): Reply => ({ kind: 'refusal', title, data: {} });
    const grains = v['particle-gravity'] ?? v.like?.gravity;
    // Without one that it is like, nothing may be left to a guess, and the hazard comes first.
    if (!v.like && v.hazard === undefined) return refuse(w.sayHazard(v.name));
    if (!v.like && v.soluble === undefined) return refuse(w.saySoluble(v.name));
    if (grains === undefined) return refuse(w.sayGravity(v.name));
    const cautions = [
      ...new Set([
        ...(v.like?.cautions ?? []).filter((one) => one !== 'soluble' || v.soluble !== false),
        ...(v.hazard ?? []),
        ...(v.soluble === true ? (['soluble'] as const) : []),
        ...hazardsInName(v.name),
      ]),
    ];
    const logged = { at: now, loggedAt: now, by: member };
    const { entry } = await book.logStudio(
      {
        kind: 'material',
        material: {
          name: v.name,
          ...(v.like && { like: v.like.id }),
          gravity: gravity(grains),
          cautions,
        },
      },
      logged,
    );
    const name = normalizedName(v.name);
    const marked = await markBuckets(
      ({ lines }) => lines.some((line) => normalizedName(line.material) === name),
      logged,
      context,
    );
    return {
      kind: 'answer',
      title: w.materialKept(v.name, entry.id),
      facts: [{ label: [words.batch.factSolids], text: words.batch.solids(grains) }],
      cautions: [
        ...(marked.length > 0 ? [w.marked(marked)] : []),
        ...cautions.map((one) => words.batch.materialCaution(one, [v.name])),
      ],
      data: { entry: entry.id, name: v.name, particleGravity: grains, cautions },
    };
  },
});
