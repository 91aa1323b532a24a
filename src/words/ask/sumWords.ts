import type { UnitSystem } from '../../studio/settings/studio.ts';
import { gravityText, massText, percentText, volumeText } from '../text/measures.ts';
import { listed } from '../text/listed.ts';
import { said, t, type Text, saidNames } from '../text/text.ts';

const degrees = (value: number): string => String(Number(value.toFixed(1)));

/** Answers that are worked out from the numbers in a question. */
export const sumWords = {
  water: (ml: number, units: UnitSystem): Text => t`Water to add: ${[volumeText(ml, units)]}.`,
  drawOff: (ml: number, units: UnitSystem): Text =>
    t`Clear water to take off after a rest: ${[volumeText(ml, units)]}. That is a keeper's work.`,
  waterEach: (ml: number, each: string, units: UnitSystem): Text =>
    t`Water to add: ${[volumeText(ml, units)]} for every ${[each]}.`,
  drawOffEach: (ml: number, each: string, units: UnitSystem): Text =>
    t`Clear water to take off after a rest: ${[volumeText(ml, units)]} for every ${[each]}. That is a keeper's work.`,
  factSum: t`The sum`,
  waterSum: (ml: number, from: number, to: number, units: UnitSystem): Text =>
    t`${[volumeText(ml, units)]} × (${[gravityText(Math.max(from, to))]} − ${[gravityText(Math.min(from, to))]}) ÷ (${[gravityText(to)]} − 1)`,
  waterStandsAt: (value: number): Text => t`It is at ${[gravityText(value)]} already: nothing goes in.`,
  half: t`Pour half of it, stir, and measure again before the rest.`,
  volumeAsSaid: t`The volume is the glaze in the pail now, not the size of the pail.`,
  volumeLogged: (ml: number, units: UnitSystem): Text =>
    t`Worked out for the ${[volumeText(ml, units)]} that the logbook says are in the pail.`,
  gravityLogged: (value: number): Text =>
    t`${[gravityText(value)]} is what the logbook says of it; weigh it after a stir to be sure.`,
  massBalance: t`Basis: derived, mass balance.`,

  salt: (grams: number, of: Text): Text => t`${[massText(grams)]} of Epsom salt ${of}.`,
  saltOfDry: (percent: number, dry: number): Text =>
    t`for ${[percentText(percent)]} of the ${[massText(dry)]} of dry powder in it`,
  saltOfWater: (percent: number, ml: number, units: UnitSystem): Text =>
    t`in ${[volumeText(ml, units)]} of water, for a solution of ${[percentText(percent)]} by weight`,
  saltPer: (per: string, ml: number, units: UnitSystem): Text =>
    t`for ${[volumeText(ml, units)]} at ${[per]}`,
  saturates: (grams: number, ml: number, units: UnitSystem): Text =>
    t`${[massText(grams)]} of Epsom salt dissolves in ${[volumeText(ml, units)]} of water at 20 °C; add a quarter more, so that crystals always stay at the bottom.`,
  factSolution: t`As solution`,
  asSolution: (ml: number, units: UnitSystem): Text =>
    t`${[volumeText(ml, units)]} of the saturated solution, at 20 °C`,
  factIfWater: t`As strong a solution`,
  ifWater: (grams: number): Text =>
    t`To make a solution of that strength with as much water, take ${[massText(grams)]}.`,
  dryAssumed: (slurry: number, solids: number): Text =>
    t`Worked out for glaze at ${[gravityText(slurry)]} with powder of gravity ${[String(solids)]}. Say another gravity if yours differs.`,
  notAtOnce: t`Don’t add it all at once: add a part, stir, wait ten minutes, and look.`,
  muchSalt: t`That is more than any bucket should get: above 0.2 % of its dry powder, ask a keeper.`,

  toGravity: (scale: 'Baumé' | 'Twaddell', value: number, gravity: number): Text =>
    t`${[degrees(value)]} ${[scale === 'Baumé' ? '°Bé' : '°Tw']} is a gravity of ${[gravity.toFixed(3)]}.`,
  fromGravity: (scale: 'Baumé' | 'Twaddell', value: number, gravity: number): Text =>
    t`A gravity of ${[String(gravity)]} is ${[degrees(value)]} ${[scale === 'Baumé' ? '°Bé' : '°Tw']}.`,
  otherScale: t`Other stem`,
  otherScaleGravity: (gravity: number): Text => t`${[gravity.toFixed(3)]}, if the stem says 144.3`,
  otherScaleDegrees: (value: number): Text => t`${[degrees(value)]} °Bé, if the stem says 144.3`,
  noSuchDegree: (scale: 'Baumé' | 'Twaddell', value: number, high: number): Text =>
    t`${[String(value)]} is off the ${[scale]} scale: I can work it out from 0 to ${high}.`,
  scaleBasis: {
    Baumé: t`Basis: 145 ÷ (145 − °Bé), the scale at 60 °F for liquids heavier than water.`,
    Twaddell: t`Basis: 1 + °Tw ÷ 200.`,
  },

  ready: (ready: readonly string[], of: number): Text =>
    of === 0
      ? t`There are no buckets yet. A keeper can set one up.`
      : ready.length === 0
        ? t`None of ${of} is ready to use now.`
        : t`${ready.length} of ${of} ready to use: ${saidNames(ready)}.`,
  stirMost: (name: string, since: Text): Text => t`${said(name)} needs a stir most: ${since}.`,
  stirNone: t`Every bucket in use was stirred in time.`,
  noBuckets: t`There is no bucket in use.`,
  sideBySide: (ready: readonly string[], others: readonly string[]): Text =>
    ready.length === 0
      ? t`${[others.length === 2 ? 'Neither' : 'None']} is ready now: ${saidNames(others)}.`
      : others.length === 0
        ? t`${[ready.length === 2 ? 'Both' : 'All']} are ready: ${saidNames(ready)}.`
        : t`${saidNames(ready)}: ready. ${saidNames(others)}: not yet.`,

  holds: (material: string, name: string): Text =>
    t`Yes: ${said(material)} is in the recipe of ${said(name)}.`,
  marked: (mark: string, name: string): Text => t`Yes: ${said(name)} is marked with ${[mark]}.`,
  holdsNot: (material: string, name: string): Text =>
    t`No ${said(material)} is in the recipe of ${said(name)}.`,
  noRecipe: (name: string): Text =>
    t`Nobody has written down the recipe of ${said(name)}, so I can't say. Ask a keeper.`,
  recipeOf: (name: string, lines: Text): Text => t`${said(name)}: ${lines}.`,
  factRecipe: 'Recipe',
  factMarks: 'Marked with',
  marks: (marks: readonly string[]): Text => [listed(marks)],
  whatWentIn: t`A recipe says what was meant to go in. It does not show what was poured in later, or what else a material contains.`,
  which: (material: string, holding: readonly string[]): Text =>
    holding.length === 0
      ? t`None of the recipes that are written down has ${said(material)}.`
      : t`With ${said(material)}: ${saidNames(holding)}.`,
  unwritten: (without: readonly string[]): Text => t`No recipe is written down for ${saidNames(without)}.`,
  ofRecipe: (recipe: string, holding: readonly string[]): Text =>
    holding.length === 0
      ? t`No bucket has the recipe ${said(recipe)}.`
      : t`The recipe ${said(recipe)} is in ${saidNames(holding)}.`,
};
