import { logs, needed, refusal, toRun, type Logging } from '../../src/contract/contract.ts';
import { thenOption } from '../../src/contract/kinds/thenLine.ts';
import { text } from '../../src/contract/kinds/texts.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';
import { findMaterial } from '../../src/glaze/materials/materials.ts';
import { mostMaterials, readMaterials, type MaterialLine } from '../../src/parse/readMaterials.ts';
import { keepMaterial } from '../../src/replies/batch/keepMaterial.ts';
import { missingOfMaterial } from '../../src/replies/batch/missingOfMaterial.ts';
import { describeMaterial } from '../../src/studio/settings/describeMaterial.ts';
import type { StudioMaterial } from '../../src/studio/settings/studioMaterial.ts';
import type { Text } from '../../src/words/text/text.ts';

type Read = { material: StudioMaterial; wrong?: never } | { wrong: Text };

/** A line's material; otherwise what is wrong with the line. */
const described = (line: MaterialLine, own: readonly StudioMaterial[], { words }: Logging): Read => {
  const w = words.recipe;
  const { name, hazards, soluble, particleGravity, unread } = line;
  const [odd] = unread;
  if (odd !== undefined) return { wrong: w.oddPart(name, odd) };
  if (!/\p{L}/u.test(name) || name.length > 60) return { wrong: w.oddName(name) };
  const like = line.like === undefined ? undefined : findMaterial(line.like);
  if (line.like !== undefined && !like) return { wrong: w.noMaterial(line.like) };
  if (particleGravity !== undefined && !(particleGravity >= 1.1 && particleGravity <= 12))
    return { wrong: w.gravityOfGrains(name, particleGravity) };
  const found = describeMaterial({ name, like, hazards, soluble, particleGravity }, own);
  if (found.kind === 'missing') return { wrong: missingOfMaterial(name, found.what, words).title };
  return found.gone.length > 0 ? { wrong: w.goneInList(name, found.gone) } : { material: found.material };
};

export const setMaterials = logs({
  name: 'materials',
  about: (w) => w.recipe.materialsAbout,
  who: 'keeper',
  form: ['list'],
  options: {
    list: needed(
      { ...text(4000, 'moon dust: like kaolin; black stain: cobalt, not soluble, 4.2') },
      (w) => w.recipe.materialsList,
    ),
    then: thenOption,
  },
  async run(v, context) {
    const { words, book } = context;
    const w = words.recipe;
    const lines = readMaterials(v.list);
    if (lines.length === 0) return refusal(w.oddName(''));
    if (lines.length > mostMaterials) return refusal(w.problem({ kind: 'too-long', most: mostMaterials }));
    const { materials: own } = await book.studio();
    const read = lines.map((line) => described(line, own, context));
    const wrong = read.flatMap((one) => (one.wrong ? [one.wrong] : []));
    const [first] = wrong;
    if (first) return { ...refusal(first), reasons: wrong.slice(1, 6), data: { wrong: wrong.length } };
    const logged = stampNow(context);
    const kept = read.flatMap((one) => (one.wrong ? [] : [one.material]));
    const entries = [];
    const marked = new Map<number, Awaited<ReturnType<typeof keepMaterial>>['marked'][number]>();
    for (const material of kept) {
      const one = await keepMaterial(material, logged, context);
      entries.push(one.entry.id);
      for (const state of one.marked) marked.set(state.no, state);
    }
    return {
      kind: 'answer',
      title: w.materialsKept(kept.length, entries),
      facts: kept.map(({ name, gravity, cautions }) => ({
        label: [{ said: name }],
        text: w.materialRow(gravity, cautions),
      })),
      cautions: marked.size > 0 ? [w.marked([...marked.values()])] : [],
      actions: v.then === undefined ? [] : [toRun(w.goOn, v.then)],
      data: { entries, materials: kept.map(({ name, gravity, cautions }) => ({ name, gravity, cautions })) },
    };
  },
});
