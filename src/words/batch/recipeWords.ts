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
    )} yet. What is it: like which material, what hazard, does it dissolve in water? Then the gravity of its grains.`,
  whyAsked: [
    'A name that nobody knows may be a poison: the supplier’s safety sheet says what it is. Until then, don’t open it.',
  ] as Text,
  askKeeper: (name: string): Text =>
    t`A keeper says it once for the whole studio: /studio material name:"${said(name)}" like: or hazard:, soluble: and particle-gravity:.`,
  whyGravity: ['Heavier grains take less room, so the same gravity needs more of them.'] as Text,
  sayWhat: (name: string): Text => t`Say what ${said(name)} is`,
  unexplained: (names: readonly string[]): Text =>
    t`Nobody has said what ${join(
      names.map((name) => t`“${said(name)}”`),
      ', ',
    )} is: take it for toxic until a keeper has read its safety sheet. Gloves, fitted mask, wash hands; no food ware.`,

  marked: (buckets: readonly { no: number; settings: { name: string }; hold?: unknown }[]): Text =>
    t`Its hazards are marked now on ${join(
      buckets.map(
        ({ settings, hold }) => t`${said(settings.name)}${[hold === undefined ? '' : ' (on hold)']}`,
      ),
      ', ',
    )}.`,
  materialAbout: 'Say once what a material is that no table has: like which, its hazards, its gravity',
  materialName: 'Its name, as recipes have it',
  like: 'The material that it is like: kaolin, soda ash, lead frit; its gravity and hazards are taken over',
  hazard: 'All its hazards by the safety sheet (barium, caustic, toxic, silica dust …), or none',
  soluble: 'Whether it dissolves in water',
  particleGravity: 'Gravity of its grains, by the supplier’s sheet',
  noMaterial: (typed: string): Text =>
    t`“${said(typed)}” is in no table. Name one that is, such as kaolin, soda ash or red iron oxide; or leave like: out and say hazard:, soluble: and particle-gravity:.`,
  sayHazard: (name: string): Text =>
    t`What is ${said(name)}? Say like: and a material that it is like, or by its safety sheet hazard: with all its hazards, or hazard:none. Nothing was saved.`,
  saySoluble: (name: string): Text =>
    t`Does ${said(name)} dissolve in water? soluble:yes or soluble:no. Nothing was saved.`,
  sayGravity: (name: string): Text =>
    t`What is the gravity of the grains of ${said(name)}? particle-gravity: and what the supplier’s sheet says. Nothing was saved.`,
  materialKept: (name: string, entry: string): Text =>
    t`The studio knows ${said(name)} now, as ${[entry]}; every recipe goes by it.`,
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
