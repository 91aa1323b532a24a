import type { Window } from '../../studio/settings/bucketSettings.ts';
import { bucketCautionWords } from './bucketCautionWords.ts';
import type { Dont, Step, VerdictCaution } from '../../studio/verdict/verdict.ts';
import type { Instant } from '../../studio/ids.ts';
import { flowWords } from './flowWords.ts';
import { agoText } from '../text/agoText.ts';
import type { Seconds } from '../../glaze/units.ts';
import {
  gravityText,
  gravityWithin,
  secondsText,
  secondsWindowText,
  spanText,
  windowText,
} from '../text/measures.ts';
import { said, t, type Text } from '../text/text.ts';
import { dropsText } from '../text/doseText.ts';
import { restText } from './restText.ts';
import { isRightText, proposedTitle } from './windowWords.ts';
import { verdictReason } from './verdictReason.ts';
import { overfull, verdictTitle } from './verdictTitle.ts';

const thenWords: Record<Step, string> = {
  'on-hold': 'it stays on hold',
  sieve: 'sieve it',
  stir: 'stir',
  measure: 'measure again',
  use: 'it should be ready to use',
  'add-water': 'it will need water; measure first',
  'draw-off-water': 'water may have to come off; measure first',
  'add-dry': 'it may need dry batch; measure first',
  flocculate: 'flocculant, if it is still thin',
  'stir-on': 'keep stirring',
  deflocculate: 'deflocculant, tried in a jar first',
  'ask-keeper': 'ask a keeper',
};

const dontWords: Record<Dont, string> = {
  use: "Don't glaze from it as it is.",
  'use-unstirred': "Don't glaze before what went in is stirred in to the bottom.",
  adjust: "Don't add anything to it or take anything from it.",
  'water-in': "Don't add water.",
  'water-out': "Don't pour water off.",
  'flocculant-to-hide-water': "Don't thicken it with flocculant: the coat would still be thin.",
  'water-to-thin-a-gel': "Don't add water: a gel only looks thick.",
  'loosen-a-borate-gel': "Don't add deflocculant: a borate glaze gels by itself, and soon gels again.",
  'water-on-looks':
    "Don't change the water just from how it looks. If you have no scale, use another bucket, or ask.",
  'powder-by-member': 'Only keepers add dry batch.',
  'all-at-once': "Don't pour the other half before you have measured again.",
};

const cautionWords: Record<VerdictCaution, string> = {
  ...bucketCautionWords,
  'drawn-water':
    'Drawn-off water holds dissolved metals. Label it and keep it for the next batch. Don’t pour it down the sink; your local rules say how to dispose of it.',
  'drawn-flux':
    'This glaze holds soluble ash, soda, borate, lithium or copper: its clear water may be caustic, and drawing it off takes flux or colour away. Wear gloves and eye protection. Or let the water evaporate instead, with the lid off and the pail out of reach.',
  dust: 'Dry glaze makes silica dust: fitted respirator, local exhaust, wet-clean. Your local rules and a qualified person come before this bot.',
  mixer:
    'A power mixer near water can give a shock: plug it into an RCD/GFCI outlet. Tie hair back, no loose sleeves.',
  lifting: 'A full 19 l pail weighs over 25 kg. Lift it with two people, or ladle it out.',
  deflocculant: 'Some deflocculants are caustic: gloves and eye protection, and read their label.',
  spray:
    'Spray only in a booth that draws outside, with a fitted respirator: the mist is silica and metals fine enough to breathe. Your local rules and a qualified person come before this bot.',
  'hold-hazard':
    'On hold because it can harm people. Keep it closed and out of reach, and follow your local rules.',
};

export const verdictWords = {
  title: verdictTitle,
  overfull,
  proposed: proposedTitle,
  isRight: isRightText,
  logTile: t`Log a test tile`,
  reason: verdictReason,
  rest: restText,
  dont: (dont: Dont): Text => [dontWords[dont]],
  caution: (caution: VerdictCaution): Text => [cautionWords[caution]],
  afterThat: (step: Step): Text => t`After that: ${[thenWords[step]]}.`,
  factGravity: 'Gravity',
  factLastReading: 'Last reading',
  factFlow: 'Flow',
  factStir: 'Last stir',
  factStirAgain: 'Stir again',
  stirAgainEvery: (hours: number): Text => [
    `before each piece, and at least every ${spanText(hours)}: it settles fast`,
  ],
  ago: (at: Instant): Text => [{ at, show: 'ago' }],
  factPredicted: 'Expected',
  flagged: (value: number): Text => t`${[gravityText(value)]}, counts once a second reading agrees`,
  notBelieved: (value: number): Text => t`${[gravityText(value)]}, does not count`,
  fromBefore: (value: number): Text => t`${[gravityText(value)]}, from before; no longer counts`,
  stirNotSaid: (value: number): Text => t`${[gravityText(value)]}; counts only if it was stirred just before`,
  /** The answer holds only if the bucket was not stirred, and nobody said. */
  wasItStirred: (title: Text): Text => t`${title} Or was it stirred? You didn't say.`,
  itWasStirred: t`It was stirred to the bottom`,
  gravityFact: (value: number, u95: number, window: Window<number> | null): Text =>
    window
      ? t`${[gravityWithin(value, u95)]} (window ${[windowText(window)]})`
      : t`${[gravityWithin(value, u95)]}`,
  window: (window: Window<number>): Text => [windowText(window)],
  secondsWindow: (window: Window<number>): Text => [secondsWindowText(window)],
  timedFact: (time: Seconds, flow: 'thin' | 'in' | 'thick'): Text =>
    t`${[secondsText(time)]}, ${[flowWords[flow]]}`,
  /** Under a cup's seconds that were timed in the cold or the heat. */
  atRoomWarmth: (time: Seconds): Text => t`${[secondsText(time)]} at room warmth`,
  flowFact: (flow: 'thin' | 'in' | 'thick'): Text => [flowWords[flow]],
  neverStirred: (frozen = false): Text => [frozen ? 'none since it froze' : 'never logged'],
  stirAgain: (hours: number): Text => [
    `It settles fast: stir it again before each piece, and at least every ${spanText(hours)}.`,
  ],
  neverStirredYet: t`no stir is logged`,
  lastStirred: (hours: number): Text => [`last stirred ${agoText(hours)}`],
  stirredAgo: (hours: number): Text => [agoText(hours)],
  headline: (name: string, title: Text): Text => t`${said(name)}: ${title}`,
  cakeGone: t`I mixed it up, the cake is gone`,
  release: t`Release it`,
  poured: (amount: string): Text => t`I poured ${[amount]}`,
  evaporateIt: t`How to let it evaporate`,
  drewOff: (amount: string): Text => t`I drew off ${[amount]}`,
  stirredIn: (amount: string): Text => t`I stirred in ${[amount]} dry`,
  dosed: (amount: string): Text => t`I added ${[amount]}`,
  loosened: (amount: string, drops: number): Text => t`${[dropsText(drops)]} ran right: I added ${[amount]}`,
  askOfGels: t`What the handbook says`,
  stirredIt: t`I stirred it to the bottom`,
  stirredOn: t`I stirred 5 more minutes`,
  itRuns: (look: 'thin' | 'right' | 'thick'): Text => [`It runs ${look}`],
  stirredItRuns: (look: 'thin' | 'right' | 'thick'): Text => [`Stirred: it runs ${look}`],
  isFull: (level: string): Text => [`It is ${level} full`],
  sievedIt: t`I sieved it`,
  ladled: t`I ladled some out`,
  measureIt: t`Log a reading`,
  protocolWeigh: t`Weight: fill the cup to the brim, wipe it dry outside, then weigh it.`,
  protocolCup: t`Cup: stir for 60 s, fill the cup, let go within 10 s, and stop the clock at the first break in the stream. Do it twice; the two times should be within 10 % of each other. If it does not run, say so.`,
  protocolFinger: t`Finger: dip a dry finger. If the glaze hides the creases of the skin, it is thick. If the creases and the line around the nail show but the skin does not, it is right. If the skin shows through, it is thin.`,
  protocolFingerGloved: t`This bucket is marked for gloves, so don’t dip a finger in. Time the flow cup instead.`,
};
