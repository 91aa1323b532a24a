import { bucketCautionWords } from './bucketCautionWords.ts';
import type { Dont, Step, VerdictCaution } from '../../studio/verdict/verdict.ts';
import { flowWords } from './flowWords.ts';
import { agoText, gravityText, gravityWithin, windowText } from '../text/measures.ts';
import { said, t, type Text } from '../text/text.ts';
import { restText } from './restText.ts';
import { verdictReason } from './verdictReason.ts';
import { overfull, verdictTitle } from './verdictTitle.ts';

const thenWords: Record<Step, string> = {
  'on-hold': 'it stays on hold',
  sieve: 'sieve it',
  stir: 'stir',
  measure: 'measure again',
  use: 'it should be ready to use',
  'add-water': 'it will want water: measure first',
  'draw-off-water': 'water may have to come off: measure first',
  'add-dry': 'it may want dry batch: measure first',
  flocculate: 'flocculant, if it is still thin',
  'stir-on': 'stir on',
  deflocculate: 'deflocculant, drop by drop',
  'ask-keeper': 'a keeper decides',
};

const dontWords: Record<Dont, string> = {
  use: "Don't glaze from it as it is.",
  'use-unstirred': "Don't glaze before what went in is stirred in, to the bottom.",
  adjust: "Don't add anything to it or take anything from it.",
  'water-in': "Don't add water.",
  'water-out': "Don't pour water off.",
  'flocculant-to-hide-water': "Don't thicken it with flocculant: the coat would still be thin.",
  'water-to-thin-a-gel': "Don't add water: a gel only looks thick.",
  'water-on-looks': "Don't change the water on looks alone. No scale at hand? Use another bucket, or ask.",
  'change-on-one-reading': "Don't change the bucket on one reading that the logbook can't explain.",
  'powder-by-member': 'Dry powder is for keepers.',
  'all-at-once': "Don't pour the other half before you have measured again.",
};

const cautionWords: Record<VerdictCaution, string> = {
  ...bucketCautionWords,
  gloves: 'Wear gloves: this bucket is marked for them. No bare fingers in it.',
  caustic: 'Caustic: gloves and eye protection. No bare fingers in it.',
  toxic: 'Toxic in the hand and the mouth: gloves, no food or drink near it.',
  'drawn-water':
    'Drawn-off water holds dissolved metals: label it and keep it for the next batch. Not down the sink; your local rules say how it may be disposed of.',
  'drawn-flux':
    'This glaze holds soluble ash, soda, borate, lithium or copper: its clear water may be caustic, and it takes flux or colour away. Gloves and eye protection; or let the water evaporate instead, lid off, out of reach.',
  dust: 'Dry batch makes silica dust: fitted respirator, local exhaust, wet-clean. Your local rules and a qualified person come before this bot.',
  mixer: 'Power mixer near water: plug it into an RCD/GFCI outlet, tie hair back, no loose sleeves.',
  lifting: 'A full 19 l pail weighs over 25 kg: two people, or ladle it.',
  deflocculant: 'Some deflocculants are caustic: gloves and eye protection, and read their label.',
  'hold-hazard': 'Held because it can harm people: keep it closed and out of reach, and follow local rules.',
};

export const verdictWords = {
  title: verdictTitle,
  overfull,
  reason: verdictReason,
  rest: restText,
  dont: (dont: Dont): Text => [dontWords[dont]],
  caution: (caution: VerdictCaution): Text => [cautionWords[caution]],
  afterThat: (step: Step): Text => t`After that: ${[thenWords[step]]}.`,
  factGravity: 'Gravity',
  factLastReading: 'Last reading',
  factFlow: 'Flow',
  factStir: 'Last stir',
  factPredicted: 'Predicted',
  notBelieved: (value: number): Text => t`${[gravityText(value)]}, kept but not believed`,
  fromBefore: (value: number): Text => t`${[gravityText(value)]}, of before: it tells nothing any more`,
  stirNotSaid: (value: number): Text =>
    t`${[gravityText(value)]}, kept; not believed, for nobody said whether it was stirred`,
  /** The answer holds only if the bucket was not stirred, and nobody said. */
  wasItStirred: (title: Text): Text => t`${title} Or was it stirred? You didn't say.`,
  itWasStirred: (): Text => ['It was stirred to the bottom'],
  gravityFact: (value: number, u95: number, window: { low: number; high: number } | null): Text =>
    window
      ? t`${[gravityWithin(value, u95)]} (window ${[windowText(window)]})`
      : t`${[gravityWithin(value, u95)]}`,
  flowFact: (flow: 'thin' | 'in' | 'thick'): Text => [flowWords[flow]],
  neverStirred: (): Text => ['never logged'],
  stirredAgo: (hours: number): Text => [hours < 1 / 60 ? 'just now' : `${agoText(hours)} ago`],
  headline: (name: string, title: Text): Text => t`${said(name)}: ${title}`,
  cakeGone: (): Text => ['I mixed it up, the cake is gone'],
  release: (): Text => ['Release it'],
  poured: (amount: string): Text => t`I poured ${[amount]}`,
  evaporateIt: (): Text => ['Let it evaporate instead'],
  drewOff: (amount: string): Text => t`I drew off ${[amount]}`,
  stirredIn: (amount: string): Text => t`I stirred in ${[amount]} dry`,
  dosed: (amount: string): Text => t`I added ${[amount]}`,
  stirredIt: (): Text => ['I stirred it to the bottom'],
  stirredOn: (): Text => ['I stirred 3 more minutes'],
  sievedIt: (): Text => ['I sieved it'],
  ladled: (): Text => ['I ladled some out'],
  measureIt: (): Text => ['Log a reading'],
  protocolWeigh: (): Text => ['Weight: fill the cup to the brim, wipe it dry outside, then weigh it.'],
  protocolCup: (): Text => [
    'Cup: stir 60 s, fill it, let go within 10 s, stop at the first break in the stream. Twice, within 10 % of each other. It may also say "won\'t run".',
  ],
  protocolFinger: (): Text => [
    'Finger: dip a dry finger. Coat hides the creases of the skin: thick. Creases and the line round the nail still show, skin does not: right. Skin shows through: thin.',
  ],
  protocolFingerGloved: (): Text => ['This bucket is marked for gloves: no finger look. Time a cup instead.'],
};
