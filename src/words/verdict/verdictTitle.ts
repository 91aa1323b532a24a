import type { UnitSystem } from '../../studio/settings/studio.ts';
import type { Amounts, Reason, Verdict } from '../../studio/verdict/verdict.ts';
import { doseText } from '../text/doseText.ts';
import { heldWhy } from './heldWhy.ts';
import { handAmount, massText, percentText, volumeText } from '../text/measures.ts';
import { pour, type Pour } from '../text/pour.ts';
import { t, type Text } from '../text/text.ts';

const water = ({ waterMl, waterMlPerLitre }: Amounts, units: UnitSystem): Pour | undefined =>
  pour(waterMl, waterMlPerLitre, units, (ml) => volumeText(handAmount(ml), units));

const drawnOff = ({ drawOffMl, drawOffMlPerLitre }: Amounts, units: UnitSystem): Pour | undefined =>
  pour(drawOffMl, drawOffMlPerLitre, units, (ml) => volumeText(handAmount(ml), units));

const powder = ({ dryGrams, dryGramsPerLitre }: Amounts, units: UnitSystem): Pour | undefined =>
  pour(dryGrams, dryGramsPerLitre, units, (g) => massText(handAmount(g), units));

const dose = ({ doseMl, doseMlPerLitre }: Amounts, units: UnitSystem): Pour | undefined =>
  pour(doseMl, doseMlPerLitre, units, doseText);

const voided = {
  cake: 'a cake was broken up since the last reading',
  sieved: 'lumps were sieved out since the last reading',
  frozen: 'it has been frozen since the last reading',
  contaminated: 'something got into it since the last reading',
} as const;

const measure = (verdict: Verdict): Text => {
  const reason =
    verdict.rule === 'void' ? verdict.reasons.find(({ because }) => because === 'void') : undefined;
  if (reason?.because === 'void')
    return t`${[verdict.readyToMeasure ? 'Measure it now' : 'Stir it to the bottom and measure it']}, weight and flow: ${[voided[reason.by]]}.`;
  if (verdict.gravity?.believed === false)
    return (verdict.hoursSinceStir ?? Infinity) * 60 <= 10
      ? t`Measure it now, while it is stirred: the reading before was of a bucket at rest.`
      : t`Stir it to the bottom and measure again: no stir was logged just before that reading.`;
  switch (verdict.rule) {
    case 'never-measured':
      return t`Weigh a cup of it now: it is stirred and was never measured. Change nothing before.`;
    case 'stale':
      return t`Measure it now, while it is stirred: the last reading is too old.`;
    case 'changed':
    case 'changed-unknown':
      return verdict.readyToMeasure
        ? t`It is stirred: measure before anything else. Something went in since the last reading.`
        : t`Stir it, then measure before anything else: something went in since the last reading.`;
    case 'unsure':
      return t`Measure better before you change anything: this reading can't tell in from out.`;
    default: {
      if (verdict.reasons.some(({ because }) => because === 'contradict'))
        return t`Cup and finger disagree: stir, and time the cup again. Don't change the water yet.`;
      const dosed = verdict.reasons.find(({ because }) => because === 'dose-at-work');
      if (dosed?.because === 'dose-at-work')
        return dosed.stirred
          ? t`It is stirred in: wait 10 minutes, then look at how it flows. Don't change the water yet.`
          : t`Stir it in, wait 10 minutes, then look at how it flows. Don't change the water yet.`;
      if (verdict.reasons.some(({ because }) => because === 'flow-at-rest'))
        return t`Stir it 60 s, then look at the flow again: it had rested too long. Don't change the water yet.`;
      return verdict.reasons.some(({ because }) => because === 'just-mixed')
        ? t`Let the air out a few minutes, then look at the flow again. Take no water out.`
        : t`Now look at how it flows. Don't change the water yet.`;
    }
  }
};

type Stop = Extract<Reason, { because: 'dose-no-change' | 'dose-checkpoint' }>;

const isStop = (reason: Reason): reason is Stop =>
  reason.because === 'dose-no-change' || reason.because === 'dose-checkpoint';

/** No more flocculant for now, as it is said to the keeper who decides, and to a member. */
const stopped = (stop: Stop, toKeeper: boolean): Text => {
  if (stop.because === 'dose-no-change')
    return toKeeper
      ? t`Stop: two doses changed nothing. It is not flocculation that is missing; has it any clay?`
      : t`Still thin, and two doses changed nothing. No more flocculant. Ask a keeper.`;
  const percent = percentText(stop.totalPercent);
  return toKeeper
    ? t`Stop: ${[percent]} of its dry mass is in. Look at it yourself before more goes in, or remake it.`
    : t`Still thin, and flocculant of ${[percent]} of its dry mass is in. No more for now. Ask a keeper.`;
};

/** Where drawn water would take flux along. */
const evaporate = (water: Pour | undefined): Text =>
  water
    ? t`Too much water. Let ${[water.amount]} of it evaporate${[water.each]}, lid off; drawing it off takes flux away.`
    : t`Too much water. Let it evaporate, lid off; drawing it off takes flux away.`;

const asked = (verdict: Verdict, units: UnitSystem): Text => {
  if (verdict.rule === 'no-window') return t`A keeper has to set first what gravity it should have.`;
  if (verdict.rule === 'never-sieved')
    return t`There are lumps, and this glaze is never sieved: a keeper decides.`;
  const stop = verdict.reasons.find(isStop);
  if (stop) return stopped(stop, verdict.keeperStep === undefined);
  if (verdict.flow === null) return t`A keeper has to set first how many seconds it should run.`;
  const drawn = drawnOff(verdict.amounts, units);
  const dry = powder(verdict.amounts, units);
  switch (verdict.keeperStep) {
    case 'draw-off-water':
      if (verdict.cautions.includes('drawn-flux')) return evaporate(drawn);
      return drawn && dry
        ? t`Too much water in it. Ask a keeper: ${[drawn.amount]} of clear water off, or ${[dry.amount]} of dry batch in${[dry.each]}.`
        : t`Too much water in it. Ask a keeper to draw some off.`;
    case 'add-dry':
      return dry
        ? t`Gelled, and then watered. Ask a keeper: ${[dry.amount]} of dry batch${[dry.each]}, then deflocculant.`
        : t`Gelled, and then watered. Ask a keeper.`;
    case 'deflocculate':
      return t`Over-flocculated: still thick after a long stir. Ask a keeper. No water.`;
    default:
      return t`Ask a keeper.`;
  }
};

/** That it is held, and why: without that, somebody who does not know puts it right. */
const held = ({ reasons }: Verdict): Text => {
  const reason = reasons.find(({ because }) => because === 'held');
  if (reason?.because !== 'held') return t`On hold. Don't use it and don't change it.`;
  return t`On hold${heldWhy(reason.hold, (cause) => `, ${cause}`)}. Don't use it and don't change it.`;
};

/** More water than the pail has room for. */
export const overfull = ({ waterMl, waterMlLeft }: Amounts, units: UnitSystem): Text => {
  const fits = volumeText(handAmount(waterMl ?? 0), units);
  const left = volumeText(handAmount(waterMlLeft ?? 0), units);
  // Less than a tenth more is less than anybody knows of the pour.
  if ((waterMlLeft ?? 0) < 0.1 * (waterMl ?? 0))
    return t`Add ${[fits]} of water, all that fits with room to stir, then stir and measure.`;
  return handAmount(waterMl ?? 0) > 0
    ? t`Add ${[fits]} of water, all that fits with room to stir, then stir and measure. It needs ${[left]} more.`
    : t`It needs ${[left]} of water, but the pail is too full: ladle some glaze out first.`;
};

/** The answer in a line that stands alone on a locked phone. */
export const verdictTitle = (verdict: Verdict, units: UnitSystem): Text =>
  verdict.dont.includes('change-on-one-reading')
    ? t`Weigh a second cup first: the logbook did not expect this. The same again? ${step(verdict, units)}`
    : step(verdict, units);

const step = (verdict: Verdict, units: UnitSystem): Text => {
  const pouring = water(verdict.amounts, units);
  switch (verdict.step) {
    case 'on-hold':
      return verdict.rule === 'retired' ? t`This bucket is retired. Don't use it.` : held(verdict);
    case 'sieve':
      return t`Sieve it first.`;
    case 'stir':
      return verdict.rule === 'cake'
        ? t`Scrape the bottom up and power-mix it. Don't add water.`
        : t`Stir it first, to the bottom. Don't add water.`;
    case 'measure':
      return measure(verdict);
    case 'use':
      return verdict.dont.includes('use-unstirred')
        ? t`Stir in what was added, then use it: gravity should still be where it belongs.`
        : t`Use it. Gravity and flow are where they should be.`;
    case 'add-water': {
      const half = verdict.dont.includes('all-at-once');
      if (!pouring) return t`It needs water.`;
      const { amount, each } = pouring;
      if (verdict.amounts.waterMlLeft !== undefined) return overfull(verdict.amounts, units);
      return half
        ? t`Add ${[amount]} of water${[each]}, half of what it needs, stir, then measure.`
        : t`Add ${[amount]} of water${[each]}, stir, then ${[verdict.then === 'flocculate' ? 'look at the flow' : 'measure']} again.`;
    }
    case 'draw-off-water': {
      const drawn = drawnOff(verdict.amounts, units);
      const dry = powder(verdict.amounts, units);
      if (verdict.cautions.includes('drawn-flux')) return evaporate(drawn);
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
      const small = dose(verdict.amounts, units);
      return small
        ? t`Thin, but not watery: add ${[small.amount]} of flocculant solution${[small.each]}, stir, wait 10 minutes, look again. No water out.`
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
