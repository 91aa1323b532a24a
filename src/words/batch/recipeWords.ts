import type { RecipeProblem } from '../../parse/readRecipe.ts';
import { recipeLine } from './recipeLine.ts';
import { join, said, t, type Text, quotedNames } from '../text/text.ts';

const recipeProblem = (why: RecipeProblem): Text => {
  switch (why.kind) {
    case 'nothing':
      return t`No recipe was typed. Type it like feldspar 37, silica 26, whiting 21, kaolin 16, + red iron oxide 3.`;
    case 'unreadable':
      return t`I can't read “${said(why.part)}”. Each part is a material and an amount, separated by commas: kaolin 16.`;
    case 'negative':
      return t`“${said(why.part)}” is below zero.`;
    case 'too-much':
      return t`“${said(why.part)}” is too much for a recipe.`;
    case 'sums-to-zero':
      return t`The recipe adds up to 0. Give at least one base material an amount.`;
    case 'too-long':
      return t`That is too long: ${why.most} materials is the most.`;
  }
};

export const recipeWords = {
  problem: recipeProblem,
  whichRecipe: (typed: string): Text => t`Which recipe is “${said(typed)}”?`,
  noRecipe: (typed: string, have: string[]): Text =>
    have.length === 0
      ? t`The studio keeps no recipe “${said(typed)}” yet. Type it out: feldspar 44, silica 31, whiting 25.`
      : t`The studio keeps no recipe “${said(typed)}”. It has ${said(have.join(', '))}. Or type the recipe out: feldspar 44, silica 31, whiting 25.`,
  gravitiesProblem: (why: RecipeProblem): Text =>
    why.kind === 'unreadable'
      ? t`I can't read “${said(why.part)}”. Give each material and its gravity, separated by commas: local clay 2.6.`
      : recipeProblem(why),
  gravityOfGrains: (material: string, value: number): Text =>
    t`${value} can't be the gravity of ${said(material)}: grains are between 1.1 and 12, clays and feldspars near 2.6.`,
  strayGravity: (material: string): Text => t`${said(material)} is not in the recipe.`,
  unknownMaterials: (names: string[]): Text =>
    t`The studio doesn't know ${quotedNames(names)} yet. Which known material is it like? Or what are its hazards, does it dissolve in water, and what is the gravity of its grains?`,
  whyAsked: t`An unknown material may be poisonous. Don’t open it before you have read the supplier’s safety sheet.`,
  askKeeper: t`A keeper can say it once for the whole studio: /studio material.`,
  whyGravity: t`Heavier grains take up less room, so more of them are needed for the same gravity.`,
  sayWhat: (name: string): Text => t`Say what ${said(name)} is`,
  unexplained: (names: readonly string[]): Text =>
    t`Nobody has said what ${quotedNames(names)} is. Treat it as toxic until a keeper has read its safety sheet: gloves, fitted mask, wash hands, no food ware.`,

  marked: (buckets: readonly { no: number; settings: { name: string }; hold?: unknown }[]): Text =>
    t`Its hazards are now marked on ${join(
      buckets.map(
        ({ settings, hold }) => t`${said(settings.name)}${[hold === undefined ? '' : ' (on hold)']}`,
      ),
      ', ',
    )}.`,
  materialAbout: 'Describe a material that the bot does not know: what it is like, its hazards, its gravity',
  materialName: 'Its name, as it stands in recipes',
  like: 'A known material that it is like (kaolin, soda ash …), to take its gravity and hazards from',
  hazard: 'All hazards on its safety sheet (barium, caustic, toxic, silica dust …), or none',
  soluble: 'Does it dissolve in water?',
  particleGravity: 'Gravity of its grains, from the supplier’s sheet',
  noMaterial: (typed: string): Text =>
    t`I don't know “${said(typed)}”. Name a known material, such as kaolin, soda ash or red iron oxide; or leave like: out and give hazard:, soluble: and particle-gravity:.`,
  sayHazard: (name: string): Text =>
    t`What is ${said(name)}? Give like: and a known material that it is like. Or give hazard: and all the hazards on its safety sheet, or hazard:none. Nothing was saved.`,
  saySoluble: (name: string): Text =>
    t`Does ${said(name)} dissolve in water? Add soluble:yes or soluble:no. Nothing was saved.`,
  sayGravity: (name: string): Text =>
    t`What is the gravity of the grains of ${said(name)}? Add particle-gravity: and the value on the supplier’s sheet. Nothing was saved.`,
  materialKept: (name: string, entry: string): Text =>
    t`The studio now knows ${said(name)}; every recipe uses it. Logged as ${[entry]}.`,
  materialsAbout: 'Teach the studio several materials at once, from a pasted list',
  materialsList:
    'One on each line: name: like kaolin; or name: hazards or none, soluble or not, gravity of grains',
  oddPart: (name: string, part: string): Text =>
    t`I can’t read “${said(part)}” of “${said(name)}”. Each line is a name and what it is: black stain: cobalt + manganese, not soluble, 4.2. Nothing was saved.`,
  oddName: (name: string): Text =>
    t`“${said(name)}” is not a material’s name. Each line is a name and what it is: moon dust: like kaolin. Nothing was saved.`,
  goneInList: (name: string, gone: readonly string[]): Text =>
    t`So far ${said(name)} has these warnings, and the list leaves them out: ${[gone.join(', ')]}. If they are wrong, describe it alone: /studio material. Nothing was saved.`,
  hazardsGone: (gone: readonly string[]): Text =>
    t`So far it has these warnings: ${[gone.join(', ')]}. With this, nobody is warned of them any more. Are you sure that they are wrong? Nothing is saved yet.`,
  materialsKept: (count: number, entries: readonly string[]): Text =>
    t`The studio now knows ${count === 1 ? t`one more material` : t`${count} more materials`}; every recipe uses them. Logged as ${[entries.join(', ')]}.`,
  materialRow: (grains: number, cautions: readonly string[]): Text =>
    t`grains ${[grains.toFixed(2)]}; ${[cautions.length === 0 ? 'no hazard given' : cautions.join(', ')]}`,
  goOn: t`Go on with the recipe`,
  sayAll: t`Say what they are`,

  oddSum: (sum: number): Text =>
    t`The base adds up to ${[String(sum)]}, not to 100. Is a material missing, or mistyped? As typed, the numbers count as parts.`,
  oddRecipe: t`That mix would have a gravity that no powder has. Check the gravities.`,

  nameIsRecipe: (name: string): Text =>
    t`“${said(name)}” looks like a recipe, not a name. Nothing was saved.`,
  kept: (name: string, entry: string): Text => t`Kept ${said(name)}, as ${[entry]}.`,
  replaced: (name: string, entry: string): Text =>
    t`Replaced ${said(name)}, as ${[entry]}; the old one stays in the log.`,
  listTitle: (count: number): Text =>
    count === 0 ? t`The studio keeps no recipes yet.` : count === 1 ? t`One recipe.` : t`${count} recipes.`,
  /** Typed again, it is the same recipe. */
  lines: (lines: readonly { material: string; amount: number; addition: boolean }[]): Text =>
    recipeLine(lines, ({ amount }) => String(Number(amount.toPrecision(6)))),
};
