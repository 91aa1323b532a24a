import {
  logs,
  needed,
  optional,
  toRun,
  type Action,
  type Logging,
  type Reply,
} from '../../src/contract/contract.ts';
import { pressToEdit } from '../../src/contract/replyParts.ts';
import { hazards, material } from '../../src/contract/kinds/material.ts';
import { yesNo } from '../../src/contract/kinds/picks.ts';
import { number } from '../../src/contract/kinds/quantities.ts';
import { thenOption } from '../../src/contract/kinds/thenLine.ts';
import { keepMaterial } from '../../src/replies/batch/keepMaterial.ts';
import { missingOfMaterial } from '../../src/replies/batch/missingOfMaterial.ts';
import { printLine } from '../../src/contract/parseLine.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';
import { name } from '../../src/contract/kinds/texts.ts';
import { noteOption } from '../../src/contract/kinds/usualOptions.ts';
import { bucketMarks, poisonIn } from '../../src/studio/bucket/bucketHazards.ts';
import { describeMaterial } from '../../src/studio/settings/describeMaterial.ts';
import type { MaterialCaution } from '../../src/glaze/materials/materialTable.ts';

/** Known hazards are taken away only after asking, and those of a poison only with a reason. */
const hazardsGone = (
  gone: readonly MaterialCaution[],
  { sure, note: why }: { sure?: boolean; note?: string },
  { words, typed }: Logging,
): Reply | undefined => {
  const w = words.recipe;
  const poison = poisonIn(bucketMarks(gone));
  const wantsReason = poison !== undefined && why === undefined;
  if (gone.length === 0 || (sure === true && !wantsReason)) return undefined;
  const take: Action = {
    label: words.bucket.marksGoneSure,
    line: printLine(['studio', 'material'], { ...typed, sure: 'yes' }),
    press: wantsReason ? 'edit' : 'run',
  };
  return {
    kind: 'choice',
    title: wantsReason ? words.bucket.poisonGone(poison) : w.hazardsGone(gone),
    private: true,
    actions: [pressToEdit(words.bucket.marksGoneEdit, 'studio material', typed), take],
    data: { option: wantsReason ? 'note' : 'sure', hazards: [...gone] },
  };
};

export const setMaterial = logs({
  name: 'material',
  about: (w) => w.recipe.materialAbout,
  who: 'keeper',
  form: ['name', 'like', 'hazard', 'soluble', 'particle-gravity'],
  options: {
    name: needed(name(60, 'moon dust'), (w) => w.recipe.materialName),
    like: optional(material, (w) => w.recipe.like),
    hazard: optional(hazards, (w) => w.recipe.hazard),
    soluble: optional(yesNo, (w) => w.recipe.soluble),
    'particle-gravity': optional(number(1.1, 12, '2.6'), (w) => w.recipe.particleGravity),
    sure: optional(yesNo, (w) => w.bucket.sureMarks),
    note: noteOption,
    then: thenOption,
  },
  async run(v, context) {
    const { words, book } = context;
    const said = {
      name: v.name,
      like: v.like,
      hazards: v.hazard,
      soluble: v.soluble,
      particleGravity: v['particle-gravity'],
    };
    const described = describeMaterial(said, (await book.studio()).materials);
    if (described.kind === 'missing') return missingOfMaterial(v.name, described.what, words);
    const doubt = hazardsGone(described.gone, v, context);
    if (doubt) return doubt;
    const { entry, marked } = await keepMaterial(described.material, stampNow(context, v.note), context);
    const { gravity, cautions } = described.material;
    return {
      kind: 'answer',
      title: words.recipe.materialKept(v.name, entry.id),
      facts: [{ label: [words.batch.factSolids], text: words.batch.solids(gravity) }],
      cautions: [
        ...(marked.length > 0 ? [words.recipe.marked(marked)] : []),
        ...cautions.map((one) => words.batch.materialCaution(one, [v.name])),
      ],
      actions: v.then === undefined ? [] : [toRun(words.recipe.goOn, v.then)],
      data: { entry: entry.id, name: v.name, particleGravity: gravity, cautions },
    };
  },
});
