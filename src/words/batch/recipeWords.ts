import type { RecipeProblem } from '../../parse/recipeProblem.ts';
import { recipeLine } from './recipeLine.ts';
import { join, said, t, type Text } from '../text/text.ts';

const recipeProblem = (why: RecipeProblem): Text => {
  switch (why.kind) {
    case 'nothing':
      return t`No recipe was typed. Like this: feldspar 37, silica 26, whiting 21, kaolin 16, + red iron oxide 3.`;
    case 'unreadable':
      return t`I can't read “${said(why.part)}”. Each part is a name and an amount, with commas between: kaolin 16.`;
    case 'negative':
      return t`“${said(why.part)}” is less than nothing.`;
    case 'too-much':
      return t`“${said(why.part)}” is more than a recipe has.`;
    case 'sums-to-zero':
      return t`The recipe sums to 0: give at least one material with an amount, besides what is added over it.`;
    case 'too-long':
      return t`That is more than ${why.most} materials.`;
  }
};

export const recipeWords = {
  problem: recipeProblem,
  whichRecipe: (typed: string): Text => t`Which recipe is “${said(typed)}”?`,
  noRecipe: (typed: string, have: string[]): Text =>
    have.length === 0
      ? t`No recipe is kept as “${said(typed)}” yet. Type it out: feldspar 44, silica 31, whiting 25.`
      : t`No recipe is kept as “${said(typed)}”. There are: ${said(have.join(', '))}. Or type it out: feldspar 44, silica 31, whiting 25.`,
  gravitiesProblem: (why: RecipeProblem): Text =>
    why.kind === 'unreadable'
      ? t`I can't read “${said(why.part)}”. Name and gravity, with commas between: local clay 2.6.`
      : recipeProblem(why),
  gravityOfGrains: (material: string, value: number): Text =>
    t`${value} can't be the gravity of ${said(material)}: grains lie between 1.1 and 12, clays and feldspars near 2.6.`,
  strayGravity: (material: string): Text => t`${said(material)} is not in the recipe.`,
  unknownMaterials: (names: string[]): Text =>
    t`The studio doesn't know ${join(
      names.map((name) => t`“${said(name)}”`),
      ', ',
    )} yet. What is the gravity of its grains? Clays, feldspars and frits are near 2.6; the supplier's sheet says.`,
  whyGravity: ['Heavier grains take less room, so the same gravity needs more of them.'] as Text,
  sayGravity: (): Text => ['Say its gravity'],
  oddRecipe: ['That mix has no gravity that powder can have.'] as Text,

  nameIsRecipe: (name: string): Text =>
    t`“${said(name)}” looks like a recipe, not a name. Nothing was saved.`,
  kept: (name: string, entry: string): Text => t`Kept ${said(name)}, as ${[entry]}.`,
  replaced: (name: string, entry: string): Text =>
    t`Kept ${said(name)} anew, as ${[entry]}; the one before stays in the log.`,
  listTitle: (count: number): Text =>
    count === 0 ? t`No recipe is kept yet.` : count === 1 ? t`One recipe.` : t`${count} recipes.`,
  /** Typed again, it is the same recipe. */
  lines: (lines: readonly { material: string; amount: number; addition: boolean }[]): Text =>
    recipeLine(lines, ({ amount }) => String(Number(amount.toPrecision(6)))),
};
