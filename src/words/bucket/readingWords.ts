import type { UnitSystem, Vessel } from '../../studio/settings/studio.ts';
import { gravityText, gravityWithin, scaleText } from '../text/measures.ts';
import { slippedPoint } from '../text/slippedPoint.ts';
import { ours, said, t, type Text } from '../text/text.ts';

const fits = ({ name, tare, water }: Vessel, units: UnitSystem): Text =>
  t`The vessel ${said(name)} weighs ${[scaleText(tare, units)]} empty and about ${[scaleText(Math.round(tare + 1.45 * water), units)]} full of glaze.`;

export const readingWords = {
  about: 'Post a reading of a bucket; the answer says what to do now',
  bucket: 'Which bucket: name, nickname or number',
  weight: "The full cup's weight, as the scale shows it",
  gravity: 'Specific gravity, if you read it off something else than a scale',
  seconds: 'Seconds for the flow cup to run out, or won’t-run',
  look: 'How a dry finger looks after a dip',
  stirred: 'Stirred to the bottom just before, no cake left?',
  seen: 'What you saw or felt: clear-water, cake, lumps, skin, cake-gone, none',
  gap: 'From the rim down to the glaze',
  temperature: 'Temperature of the glaze',
  vessel: 'The calibrated cup that you weighed',
  weighed: "Whether the weight is with the empty cup's own",
  scale: 'The scale that gravity is read on',
  within: 'How far off the gravity may be, either way',
  cup: 'The flow cup that you timed',
  nothing: ours(
    'What did you measure? Give a weight, a gravity, seconds, a look, or the gap from rim to glaze. Least typing: weight, look and stirred:yes.',
  ),
  both: ours('Give the weight or the gravity, not both. Nothing was saved.'),
  sticks: ours(
    'A hydrometer sticks in a thick glaze and reads wrong. Weigh a cup of it instead. Nothing was saved.',
  ),
  noFinger: ours('This bucket is marked for gloves: no finger look. Time a cup instead. Nothing was saved.'),
  noPail: ours(
    "The studio doesn't know this bucket's pail. A keeper says /bucket change pail:19l; until then give no gap.",
  ),
  gapTooDeep: (deepest: number): Text =>
    t`The gap can't be deeper than the pail: ${[`${Math.round(deepest / 10)} cm`]} at most. Nothing was saved.`,
  noVessel: ours(
    'No cup is calibrated here yet, so a weight says nothing. A keeper weighs one empty and full of water: /studio vessel name:"steel cup" tare:85.4g water:100.2g. Or give gravity:1.44.',
  ),
  whichVessel: ours('Which cup did you weigh?'),
  belowWater: (value: number): Text =>
    t`${[String(value)]} is lighter than water, which is 1. Was the weight typed as gravity, or the empty cup taken off twice? Nothing was saved.`,
  aboveGlaze: (value: number): Text =>
    t`${[String(value)]} can't be the gravity of a glaze: none is over 2.5. ${[slippedPoint(value) ? `Was it ${slippedPoint(value)}? ` : '']}If it is °Bé, add scale:baume; if it is grams, use weight:. Nothing was saved.`,
  water: (value: number): Text =>
    t`A gravity of ${[gravityText(value)]} is that of water, which is 1, not of a glaze. Was there glaze in the cup, stirred up from the bottom, or is it another scale? Nothing was saved.`,
  paste: (value: number, fraction: number): Text =>
    t`At ${[gravityText(value)]}, ${[String(Math.round(100 * fraction))]} % of this glaze would be grains: a paste, which fills no cup level. Was the cup's own weight taken off, or is it another scale? Nothing was saved.`,
  twoScales: (typed: string, scale: string): Text =>
    t`“${said(typed)}” is on another scale than scale:${[scale]}. Which one was it? Say it once. Nothing was saved.`,
  abovePowder: (value: number, solids: number): Text =>
    t`A gravity of ${[gravityText(value)]} can't be: the powder of this bucket has ${[gravityText(solids)]} itself. Was the cup's own weight taken off? Nothing was saved.`,
  withCup: (typed: string, vessel: string): Text =>
    t`Is “${said(typed)}” with the empty ${said(vessel)}, or was the scale set to zero with it on?`,
  weighedWay: (way: 'with-cup' | 'without-cup', gravity: number): Text =>
    way === 'with-cup'
      ? t`With the cup: ${[gravityText(gravity)]}`
      : t`Scale at zero with it on: ${[gravityText(gravity)]}`,
  wrongUnit: (typed: string, vessel: Vessel, units: UnitSystem, meant: number): Text =>
    t`“${said(typed)}” can't be one cup of glaze. Grams? Then type ${[`${Number(meant.toFixed(1))}g`]}. ${fits(vessel, units)} Nothing was saved.`,
  tooHeavy: (typed: string, vessel: Vessel, units: UnitSystem): Text =>
    t`“${said(typed)}” is too heavy for a full cup. ${fits(vessel, units)} Another cup, or another unit? Nothing was saved.`,
  tooLight: (typed: string, vessel: Vessel, units: UnitSystem): Text =>
    t`“${said(typed)}” is too light for a full cup. ${fits(vessel, units)} Was it filled to the brim? Nothing was saved.`,
  weighedAs: (gravity: number, u95: number, vessel: Vessel, cup: 'on' | 'off', units: UnitSystem): Text =>
    cup === 'on'
      ? t`Weighed in ${said(vessel.name)}, its ${[scaleText(vessel.tare, units)]} taken off: ${[gravityWithin(gravity, u95)]}.`
      : t`Weighed in ${said(vessel.name)}, taken as without the cup's own weight: ${[gravityWithin(gravity, u95)]}.`,
  statedAs: (gravity: number, u95: number, by: 'stated' | 'hydrometer'): Text =>
    by === 'hydrometer'
      ? t`From a hydrometer: ${[gravityWithin(gravity, u95)]}.`
      : t`Gravity as stated: ${[gravityWithin(gravity, u95)]}.`,
  viscosity: (value: number, at20: number | undefined): Text =>
    at20 === undefined
      ? t`${[String(Math.round(value))]} mm²/s by the cup's table; for comparing this bucket with itself.`
      : t`${[String(Math.round(value))]} mm²/s by the cup's table, ${[String(Math.round(at20))]} at 20 °C; for comparing this bucket with itself.`,
};
