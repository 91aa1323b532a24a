import type { UnitSystem, Vessel } from '../../studio/settings/studio.ts';
import { gravityText, gravityWithin, scaleText } from '../text/measures.ts';
import { slippedPoint } from '../text/slippedPoint.ts';
import { said, t, type Text } from '../text/text.ts';

const fits = ({ name, tare, water }: Vessel, units: UnitSystem): Text =>
  t`The cup ${said(name)} weighs ${[scaleText(tare, units)]} empty and about ${[scaleText(Math.round(tare + 1.45 * water), units)]} full of glaze.`;

export const readingWords = {
  about: 'Log a reading; the answer says what to do now',
  bucket: 'Which bucket: name, nickname or number',
  weight: "The full cup's weight, as the scale shows it",
  gravity: 'Specific gravity, if you did not weigh a cup',
  seconds: 'Seconds for the flow cup to run out, or won’t-run',
  look: 'How a dry finger looks after a dip',
  stirred: 'Stirred to the bottom just before, no cake left?',
  seen: 'What you saw or felt: clear water, cake, lumps, skin, cake gone, smell, mould, crystals, ice, none',
  gap: 'Gap from the rim down to the glaze',
  level: 'How full: two thirds, 60 %, 12 l, 7 cm down',
  temperature: 'Temperature of the glaze',
  vessel: 'The weighing cup that you used',
  weighed: 'Does the weight include the empty cup?',
  scale: 'The unit of the gravity',
  within: 'How exact the gravity is, plus or minus',
  cup: 'The flow cup that you timed',
  nothing: t`What did you measure? Give a weight, a gravity, a cup time, a look, or how full it is. The least that helps is a weight, a look, and that you stirred it.`,
  both: t`Give the weight or the gravity, not both. Nothing was saved.`,
  sticks: t`A hydrometer sticks in a thick glaze and reads wrong. Weigh a cup of it instead. Nothing was saved.`,
  noFinger: t`This bucket is marked for gloves: no finger look. Time the flow cup instead. Nothing was saved.`,
  noPail: t`The studio doesn't know this bucket's pail. Say how many litres are in it; or a keeper can set the pail: /bucket change pail:19l. Nothing was saved.`,
  gapTooDeep: (deepest: number): Text =>
    t`The gap can't be deeper than the pail: ${[`${Math.round(deepest / 10)} cm`]} at most. Nothing was saved.`,
  gapAndLevel: t`Give the gap or the level, not both. Nothing was saved.`,
  levelOverRim: (pail: string): Text => t`More than the pail holds: ${[pail]} to the rim. Nothing was saved.`,
  noVessel: t`No cup is calibrated here yet, so I can’t work out a gravity from a weight. A keeper weighs a cup empty, then the water that fills it: /studio vessel name:"steel cup" tare:85.4g water:100.2g. Or give gravity:1.44.`,
  whichVessel: t`Which cup did you weigh?`,
  belowWater: (value: number): Text =>
    t`${[String(value)]} is lighter than water, which is 1. Is it a weight, or was the empty cup subtracted twice? Nothing was saved.`,
  aboveGlaze: (value: number): Text =>
    t`${[String(value)]} can't be the gravity of a glaze: none is over 2.5. ${[slippedPoint(value) ? `Was it ${slippedPoint(value)}? ` : '']}If it is °Bé, add scale:baume; if it is grams, use weight:. Nothing was saved.`,
  water: (value: number): Text =>
    t`A gravity of ${[gravityText(value)]} is almost that of water, which is 1. Was the glaze stirred up from the bottom, or is the number in another unit? Nothing was saved.`,
  paste: (value: number, fraction: number): Text =>
    t`At ${[gravityText(value)]}, ${[String(Math.round(100 * fraction))]} % of this glaze would be powder: a paste that fills no cup. Was the empty cup subtracted, or is the number in another unit? Nothing was saved.`,
  twoScales: (typed: string, scale: string): Text =>
    t`“${said(typed)}” is in another unit than scale:${[scale]}. Which one was it? Say it once. Nothing was saved.`,
  abovePowder: (value: number, solids: number): Text =>
    t`The gravity can't be ${[gravityText(value)]}: the dry powder of this bucket is only ${[gravityText(solids)]}. Was the empty cup subtracted? Nothing was saved.`,
  instead: 'The reading that this one replaces',
  noReading: (id: string): Text => t`${[id]} is not a reading. Nothing was saved.`,
  wasItThat: (name: string, here: string): Text =>
    t`Was it ${said(name)}? This reading is odd for ${said(here)} and fits ${said(name)} much better.`,
  itWas: (name: string): Text => t`It was ${said(name)}`,
  cupTold: (way: 'with-cup' | 'without-cup', gravity: number): Text =>
    way === 'with-cup'
      ? t`I took the weight as with the cup. As without the cup, it would be a gravity of ${[gravityText(gravity)]}, which does not fit this bucket.`
      : t`I took the weight as without the cup. As with the cup, it would be a gravity of ${[gravityText(gravity)]}, which does not fit this bucket.`,
  withCup: (typed: string, vessel: string): Text =>
    t`Does “${said(typed)}” include the empty ${said(vessel)}, or did you set the scale to zero with the cup on it?`,
  weighedWay: (way: 'with-cup' | 'without-cup', gravity: number): Text =>
    way === 'with-cup'
      ? t`Includes the cup: ${[gravityText(gravity)]}`
      : t`Scale set to zero first: ${[gravityText(gravity)]}`,
  wrongUnit: (typed: string, vessel: Vessel, units: UnitSystem, meant: number): Text =>
    t`“${said(typed)}” can't be one cup of glaze. Grams? Then type ${[`${Number(meant.toFixed(1))}g`]}. ${fits(vessel, units)} Nothing was saved.`,
  tooHeavy: (typed: string, vessel: Vessel, units: UnitSystem): Text =>
    t`“${said(typed)}” is too heavy for a full cup. ${fits(vessel, units)} Another cup, or another unit? Nothing was saved.`,
  tooLight: (typed: string, vessel: Vessel, units: UnitSystem): Text =>
    t`“${said(typed)}” is too light for a full cup. ${fits(vessel, units)} Was it filled to the brim? Nothing was saved.`,
  weighedAs: (gravity: number, u95: number, vessel: Vessel, cup: 'on' | 'off', units: UnitSystem): Text =>
    cup === 'on'
      ? t`Weighed in ${said(vessel.name)}, minus its ${[scaleText(vessel.tare, units)]}: ${[gravityWithin(gravity, u95)]}.`
      : t`Weighed in ${said(vessel.name)}, read as without the cup's own weight: ${[gravityWithin(gravity, u95)]}.`,
  statedAs: (gravity: number, u95: number, by: 'stated' | 'hydrometer'): Text =>
    by === 'hydrometer'
      ? t`From a hydrometer: ${[gravityWithin(gravity, u95)]}.`
      : t`Gravity as you gave it: ${[gravityWithin(gravity, u95)]}.`,
  viscosity: (value: number, at20: number | undefined): Text =>
    at20 === undefined
      ? t`${[String(Math.round(value))]} mm²/s by the cup's table. Compare it only with earlier times of this bucket.`
      : t`${[String(Math.round(value))]} mm²/s by the cup's table, ${[String(Math.round(at20))]} at 20 °C. Compare it only with earlier times of this bucket.`,
};
