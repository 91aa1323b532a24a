import type { UnitSystem } from '../studio/studio.ts';
import type { Amounts, Dont, Reason, Step, Verdict, VerdictCaution } from '../studio/verdict.ts';
import { doseText } from './doseText.ts';
import {
  gravityText,
  gravityWithin,
  handAmount,
  massText,
  percentText,
  secondsText,
  spanText,
  temperatureText,
  volumeText,
  windowText,
} from './measures.ts';
import { said, t, type Part, type Text } from './text.ts';

const cupName = (cup: string) => said(cup);

/** An amount for the pail; for each litre in it, when nobody has said lately how full it is. */
interface Pour {
  amount: string;
  each: '' | ' for each litre in the pail';
}

const pour = (
  whole: number | undefined,
  perLitre: number | undefined,
  ofWhole: (value: number) => string,
  ofLitre: (value: number) => string,
): Pour | undefined => {
  if (whole !== undefined) return { amount: ofWhole(whole), each: '' };
  return perLitre === undefined
    ? undefined
    : { amount: ofLitre(perLitre), each: ' for each litre in the pail' };
};

const water = ({ waterMl, waterMlPerLitre }: Amounts, units: UnitSystem): Pour | undefined =>
  pour(
    waterMl,
    waterMlPerLitre,
    (ml) => volumeText(handAmount(ml), units),
    (ml) => `${handAmount(ml)} ml`,
  );

const drawnOff = ({ drawOffMl, drawOffMlPerLitre }: Amounts, units: UnitSystem): Pour | undefined =>
  pour(
    drawOffMl,
    drawOffMlPerLitre,
    (ml) => volumeText(handAmount(ml), units),
    (ml) => `${handAmount(ml)} ml`,
  );

const powder = ({ dryGrams, dryGramsPerLitre }: Amounts, units: UnitSystem): Pour | undefined =>
  pour(
    dryGrams,
    dryGramsPerLitre,
    (g) => massText(handAmount(g), units),
    (g) => `${handAmount(g)} g`,
  );

const dose = ({ doseMl, doseMlPerLitre }: Amounts): Pour | undefined =>
  pour(doseMl, doseMlPerLitre, doseText, (ml) => `${Number(ml.toFixed(2))} ml`);

const measure = (verdict: Verdict): Text => {
  if (verdict.gravity?.believed === false)
    return t`Stir it to the bottom and measure again: that reading was of a bucket at rest.`;
  switch (verdict.rule) {
    case 'never-measured':
      return t`Weigh a cup of it now: it is stirred and was never measured. Change nothing before.`;
    case 'stale':
      return t`Measure it now, while it is stirred: the last reading is too old.`;
    case 'changed':
    case 'changed-unknown':
      return t`Stir it, then measure before anything else: something went in since the last reading.`;
    case 'unsure':
      return t`Measure better before you change anything: this reading can't tell in from out.`;
    default:
      return verdict.reasons.some(({ because }) => because === 'just-mixed')
        ? t`Let the air out a few minutes, then look at the flow again. Take no water out.`
        : t`Now look at how it flows. Don't change the water yet.`;
  }
};

const asked = (verdict: Verdict, units: UnitSystem): Text => {
  if (verdict.rule === 'no-window') return t`Ask a keeper: nobody has set what this bucket should measure.`;
  if (verdict.rule === 'unsieved') return t`Ask a keeper: there are lumps, and this glaze is never sieved.`;
  const drawn = drawnOff(verdict.amounts, units);
  const dry = powder(verdict.amounts, units);
  switch (verdict.keeperStep) {
    case 'draw-off-water':
      return drawn && dry
        ? t`Too much water in it. Ask a keeper: ${[drawn.amount]} of clear water off, or ${[dry.amount]} of dry batch in${[dry.each]}.`
        : t`Too much water in it. Ask a keeper to draw some off.`;
    case 'add-dry':
      return dry
        ? t`Gelled, and then watered. Ask a keeper: ${[dry.amount]} of dry batch${[dry.each]}, then deflocculant.`
        : t`Gelled, and then watered. Ask a keeper.`;
    case 'deflocculate':
      return t`Over-flocculated: still thick after a long stir. Ask a keeper. No water.`;
    case 'flocculate':
      return t`Still thin after all the flocculant it should take. Ask a keeper.`;
    default:
      return t`Ask a keeper.`;
  }
};

/** More water than the pail has room for. */
const overfull = ({ waterMl, waterMlLeft }: Amounts, fits: string, units: UnitSystem): Text => {
  const left = volumeText(handAmount(waterMlLeft ?? 0), units);
  return handAmount(waterMl ?? 0) > 0
    ? t`Add ${[fits]} of water, all that fits the pail, stir and measure. It needs ${[left]} more.`
    : t`It needs ${[left]} of water, but the pail is full: ladle some glaze out first.`;
};

const title = (verdict: Verdict, units: UnitSystem): Text => {
  const pouring = water(verdict.amounts, units);
  switch (verdict.step) {
    case 'on-hold':
      return verdict.rule === 'retired'
        ? t`This bucket is retired. Don't use it.`
        : t`On hold. Don't use it and don't change it.`;
    case 'sieve':
      return t`Sieve it first.`;
    case 'stir':
      return verdict.rule === 'cake'
        ? t`Scrape the bottom up and power-mix it. Don't add water.`
        : t`Stir it first, to the bottom. Don't add water.`;
    case 'measure':
      return measure(verdict);
    case 'use':
      return t`Use it. Gravity and flow are where they should be.`;
    case 'add-water': {
      const half = verdict.dont.includes('all-at-once');
      if (!pouring) return t`It needs water.`;
      const { amount, each } = pouring;
      if (verdict.amounts.waterMlLeft !== undefined) return overfull(verdict.amounts, amount, units);
      return half
        ? t`Add ${[amount]} of water${[each]}, half of what it needs, stir, then measure.`
        : t`Add ${[amount]} of water${[each]}, stir, then ${[verdict.then === 'flocculate' ? 'look at the flow' : 'measure']} again.`;
    }
    case 'draw-off-water': {
      const drawn = drawnOff(verdict.amounts, units);
      const dry = powder(verdict.amounts, units);
      return drawn && dry
        ? t`Too much water. Let it rest, draw off ${[drawn.amount]} of clear water, or stir in ${[dry.amount]} of dry batch${[dry.each]}.`
        : t`Too much water. Let it rest and draw clear water off.`;
    }
    case 'add-dry': {
      const dry = powder(verdict.amounts, units);
      return dry
        ? t`Gelled, and then watered. Stir in ${[dry.amount]} of dry batch${[dry.each]}, then deflocculate.`
        : t`Gelled, and then watered. It needs dry batch, then deflocculant.`;
    }
    case 'flocculate': {
      if (verdict.reasons.some(({ because }) => because === 'dose-no-change'))
        return t`Still thin, and two doses changed nothing. No more flocculant; a keeper looks at it.`;
      if (verdict.reasons.some(({ because }) => because === 'dose-checkpoint'))
        return t`Still thin, with all the flocculant in it that it should take. Look closer before more goes in.`;
      const small = dose(verdict.amounts);
      return small
        ? t`Thin, but not watery: add ${[small.amount]} of flocculant solution${[small.each]}, stir, look again. No water out.`
        : t`Thin, but not watery: it needs flocculant, in small doses. No water out.`;
    }
    case 'stir-on':
      return t`Stir on, 2 to 5 minutes, and look again. Don't add water.`;
    case 'deflocculate':
      return t`Over-flocculated: deflocculant, drop by drop, stirring between. No water.`;
    case 'ask-keeper':
      return asked(verdict, units);
  }
};

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
  'ask-keeper': 'ask a keeper',
};

const dontWords: Record<Dont, string> = {
  use: "Don't glaze from it as it is.",
  adjust: "Don't add anything to it or take anything from it.",
  'water-in': "Don't add water.",
  'water-out': "Don't pour water off.",
  'flocculant-to-hide-water': "Don't thicken it with flocculant: the coat would still be thin.",
  'water-to-thin-a-gel': "Don't add water: a gel only looks thick.",
  'water-on-looks': "Don't change the water on looks alone. No scale at hand? Use another bucket, or ask.",
  'powder-by-member': 'Dry powder is for keepers.',
  'all-at-once': "Don't pour the other half before you have measured again.",
};

const cautionWords: Record<VerdictCaution, string> = {
  gloves: 'Wear gloves: this bucket is marked for them. No bare fingers in it.',
  caustic: 'Caustic: gloves and eye protection. No bare fingers in it.',
  toxic: 'Toxic in the hand and the mouth: gloves, no food or drink near it.',
  'drawn-water':
    'Drawn-off water holds dissolved metals: label it and keep it for the next batch. Not down the sink; your local rules say how it may be disposed of.',
  dust: 'Dry batch makes silica dust: fitted respirator, local exhaust, wet-clean. Your local rules and a qualified person come before this bot.',
  mixer: 'Power mixer near water: plug it into an RCD/GFCI outlet, tie hair back, no loose sleeves.',
  lifting: 'A full 19 l pail weighs over 25 kg: two people, or ladle it.',
  deflocculant: 'Some deflocculants are caustic: gloves and eye protection, and read their label.',
  'hold-hazard': 'Held because it can harm people: keep it closed and out of reach, and follow local rules.',
};

const band = { low: 'below', in: 'inside', high: 'above' } as const;
const flowWords = { thin: 'thin', in: 'right', thick: 'thick', unknown: 'unknown' } as const;

export interface VerdictSetting {
  units: UnitSystem;
  member(id: Extract<Reason, { because: 'held' }>['hold']['by']): Part;
}

const reason = (r: Reason, { units, member }: VerdictSetting): Text => {
  switch (r.because) {
    case 'held':
      return t`On hold (${[r.hold.cause]}): ${said(r.hold.why)}. By ${member(r.hold.by)}, ${{ at: r.hold.since, show: 'ago' }}.`;
    case 'retired':
      return t`It was retired.`;
    case 'cake':
      return t`A hard cake was felt at the bottom ${{ at: r.since, show: 'ago' }} and nobody has said that it is gone.`;
    case 'unsieved':
      return r.mesh === 'never'
        ? t`${[r.what === 'skin' ? 'A skin was' : 'Lumps were']} seen ${{ at: r.since, show: 'ago' }}; this glaze is marked never to be sieved.`
        : t`${[r.what === 'skin' ? 'A skin was' : 'Lumps were']} seen ${{ at: r.since, show: 'ago' }}, and it has not been sieved since. Its mesh: ${r.mesh}. Dried glaze from the rim waits for the next batch.`;
    case 'never-stirred':
      return t`Nobody has logged a stir. At rest a bucket parts into thin top and cake: it looks watery and is not.`;
    case 'rested':
      return t`Last stirred ${{ at: r.at, show: 'ago' }} (${[spanText(r.hours)]}); it may rest ${[spanText(r.limitHours)]}. At rest it parts into thin top and cake: it looks watery and is not.`;
    case 'stirred':
      return t`Stirred ${{ at: r.at, show: 'ago' }}.`;
    case 'no-window':
      return t`No gravity window is set for this bucket.`;
    case 'never-measured':
      return t`There is no reading taken on a stirred bucket yet.`;
    case 'unbelieved':
      return t`The reading of ${[gravityText(r.value)]} ${{ at: r.at, show: 'ago' }} is kept but not believed: the bucket was not stirred to the bottom just before.`;
    case 'stale':
      return t`Last believed reading ${{ at: r.at, show: 'day' }}, ${[spanText(r.days * 24)]} ago; good for ${[spanText(r.limitDays * 24)]}.`;
    case 'added-unknown':
      return t`${[r.count === 1 ? 'Something' : `${r.count} things`]} went in or came out since the last reading that can't be reckoned with: how much, or how full the pail is, was not said.`;
    case 'moved':
      return t`What was logged since could move gravity by ${[r.by.toFixed(3)]}, more than the reading's ± ${[r.u95.toFixed(3)]}.`;
    case 'predicted':
      return t`The logbook predicts ${[gravityWithin(r.value, r.u95)]}.`;
    case 'unsure':
      return t`± ${[r.u95.toFixed(3)]} is wider than the window ${[windowText(r.window)]}. A bigger cup, filled level, on a scale that shows 0.1 g, weighed twice, does better; a hydrometer does not.`;
    case 'gravity':
      return r.edge
        ? t`Gravity ${[gravityWithin(r.value, r.u95)]}: a little outside ${[windowText(r.window)]}, but inside within what the reading can tell.`
        : t`Gravity ${[gravityWithin(r.value, r.u95)]}, ${[band[r.band]]} its window ${[windowText(r.window)]}.`;
    case 'efflux':
      return t`${cupName(r.cup)}: ${[secondsText(r.seconds)]}, ${[flowWords[r.band]]} against ${[`${r.window.low} to ${r.window.high} s`]}.`;
    case 'off-temperature':
      return t`Timed at ${[temperatureText(r.temperature, units)]}: ${[r.temperature < r.room ? 'cold glaze runs slower and seems thicker' : 'warm glaze runs faster and seems thinner']} than it is at ${[temperatureText(r.room, units)]}.`;
    case 'efflux-no-window':
      return t`${cupName(r.cup)}: ${[secondsText(r.seconds)]}; no window of seconds is set, so it is only kept.`;
    case 'other-cup':
      return t`Timed with ${cupName(r.cup)}, but the window is for ${cupName(r.windowCup)}. Times of two cups are never compared.`;
    case 'look':
      return t`Finger look: ${[r.look]}.`;
    case 'disagree':
      return t`The cup says ${[flowWords[r.efflux]]}, the finger says ${[flowWords[r.look]]}. The cup decides; look again if it surprises you.`;
    case 'flow-unknown':
      return t`No look at the flow since the last stir or change.`;
    case 'stirred-short':
      return r.minutes === undefined
        ? t`A bucket can be thixotropic: thick at rest, thin while stirred. How long it was stirred was not said.`
        : t`Stirred ${[spanText(r.minutes / 60)]}; a thixotropic bucket takes up to 5 minutes to loosen.`;
    case 'stirred-long':
      return t`Stirred ${[spanText(r.minutes / 60)]} in all, and still thick.`;
    case 'just-mixed':
      return t`Just machine-mixed: air makes it read low and flow thin.`;
    case 'volume':
      return t`Worked out for ${[volumeText(r.value, units)]} in the pail, ± ${[volumeText(r.u95, units)]}.`;
    case 'volume-old':
      return t`How full the pail is has not been said lately. Tell me the gap from rim to glaze, and I'll give the amount for the pail.`;
    case 'held-back':
      return t`${[String(Math.round((100 * r.safe) / r.wanted))]} % of the way to mid-window: more could pass the far edge.`;
    case 'pail-full':
      return t`${[r.fits < 1 ? 'Nothing' : `Only ${volumeText(r.fits, units)}`]} fits under the rim. Ladle some glaze into a second pail, say so, and ask again: what is left in this one needs less.`;
    case 'no-room-for-dry':
      return r.fits < 1
        ? t`The pail is full: dry batch goes in once clear water is off.`
        : t`Only ${[massText(r.fits, units)]} of dry batch fits under the rim, of ${[massText(r.wanted, units)]}: draw clear water off first.`;
    case 'dose':
      return t`${[percentText(r.percent)]} of its dry mass: ${[massText(r.grams, units)]} of Epsom salt; ${[percentText(r.totalPercent)]} in all since the last remake.`;
    case 'dose-learned':
      return r.high === undefined
        ? t`Learned from its own readings: at least ${[volumeText(r.low, units)]} to mid-window; how much at most, they don't say yet. Never more than two rungs at once.`
        : t`Learned from its own readings: ${[volumeText(r.low, units)]} to ${[volumeText(r.high, units)]} to mid-window, nine in ten. Never more than two rungs at once.`;
    case 'dose-no-change':
      return t`The last two doses changed nothing: it is not flocculation that is missing. Is there clay in it?`;
    case 'dose-checkpoint':
      return t`${[percentText(r.totalPercent)]} of its dry mass has gone in since the last remake: past 0.2 % a keeper looks first.`;
  }
};

export const verdictWords = {
  title,
  reason,
  dont: (dont: Dont): Text => [dontWords[dont]],
  caution: (caution: VerdictCaution): Text => [cautionWords[caution]],
  afterThat: (step: Step): Text => t`After that: ${[thenWords[step]]}.`,
  factGravity: 'Gravity',
  factFlow: 'Flow',
  factStir: 'Last stir',
  factPredicted: 'Predicted',
  notBelieved: (value: number): Text => t`${[gravityText(value)]}, kept but not believed`,
  gravityFact: (value: number, u95: number, window: { low: number; high: number } | null): Text =>
    window
      ? t`${[gravityWithin(value, u95)]} (window ${[windowText(window)]})`
      : t`${[gravityWithin(value, u95)]}`,
  flowFact: (flow: 'thin' | 'in' | 'thick'): Text => [flowWords[flow]],
  neverStirred: (): Text => ['never logged'],
  stirredAgo: (hours: number): Text => [hours < 1 / 60 ? 'just now' : `${spanText(hours)} ago`],
  headline: (name: string, title: Text): Text => t`${said(name)}: ${title}`,
  cakeGone: (): Text => ['I mixed it up, the cake is gone'],
  release: (): Text => ['Release it'],
  poured: (amount: string): Text => t`I poured ${[amount]}`,
  drewOff: (amount: string): Text => t`I drew off ${[amount]}`,
  stirredIn: (amount: string): Text => t`I stirred in ${[amount]} dry`,
  dosed: (amount: string): Text => t`I added ${[amount]}`,
  stirredIt: (): Text => ['I stirred it to the bottom'],
  stirredOn: (): Text => ['I stirred 3 more minutes'],
  sievedIt: (): Text => ['I sieved it'],
  measureIt: (): Text => ['Log a reading'],
  protocolCup: (): Text => [
    'Cup: stir 60 s, fill it, let go within 10 s, stop at the first break in the stream. Twice, within 10 % of each other. It may also say "won\'t run".',
  ],
  protocolFinger: (): Text => [
    'Finger: dip a dry finger. Coat hides the creases of the skin: thick. Creases and the line round the nail still show, skin does not: right. Skin shows through: thin.',
  ],
  protocolFingerGloved: (): Text => ['This bucket is marked for gloves: no finger look. Time a cup instead.'],
};
