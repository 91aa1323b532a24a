import type { UnitSystem } from '../../studio/settings/studio.ts';
import type { Amounts, Reason, Verdict } from '../../studio/verdict/verdict.ts';
import { oddsText } from '../text/oddsText.ts';
import { doseText } from '../text/doseText.ts';
import { voided } from './verdictReason.ts';
import { isStop, jarTest, stopped } from './doseTitle.ts';
import { heldWhy } from './heldWhy.ts';
import { handWater, powderText, waterText, type Measures } from '../text/hand.ts';
import { gravityText } from '../text/measures.ts';
import { pour, type Pour } from '../text/pour.ts';
import { t, type Text } from '../text/text.ts';

const water = ({ waterMl, waterMlPerLitre }: Amounts, units: UnitSystem): Pour | undefined =>
  pour(waterMl, waterMlPerLitre, units, (ml) => waterText(ml, units));

const drawnOff = ({ drawOffMl, drawOffMlPerLitre }: Amounts, units: UnitSystem): Pour | undefined =>
  pour(drawOffMl, drawOffMlPerLitre, units, (ml) => waterText(ml, units));

const powder = ({ dryGrams, dryGramsPerLitre }: Amounts, measures: Measures): Pour | undefined =>
  pour(dryGrams, dryGramsPerLitre, measures.units, (g) => powderText(g, measures));

const dose = ({ doseMl, doseMlPerLitre }: Amounts, units: UnitSystem): Pour | undefined =>
  pour(doseMl, doseMlPerLitre, units, doseText);

const isBecause = ({ reasons }: Verdict, because: Reason['because']): boolean =>
  reasons.some((one) => one.because === because);

/** How to look at the flow, which comes before any change of the water. */
const lookNext = (verdict: Verdict, next: (what: string) => string): Text => {
  const { asks, reasons, readyToMeasure } = verdict;
  const first = (what: string): Text => t`${[what]}. Don't change the water yet.`;
  if (isBecause(verdict, 'contradict'))
    return first('Cup and finger disagree. Stir, and time the flow cup again');
  const dosed = reasons.find(({ because }) => because === 'dose-at-work');
  if (dosed?.because === 'dose-at-work')
    return first(
      `${dosed.stirred ? 'It is stirred in: wait' : 'Stir it in, wait'} 10 minutes, then look at how it flows`,
    );
  if (isBecause(verdict, 'flow-at-rest'))
    return first('Stir it for 60 s, then look at the flow again: it had stood too long');
  if (isBecause(verdict, 'just-mixed'))
    return t`Let the air rise out for a few minutes, then look at the flow again. Take no water out.`;
  if (isBecause(verdict, 'time-again')) return first('Time the flow cup a second time, to be sure');
  if (asks[0] === 'seconds') return first(next('time the flow cup'));
  const isOnlyLogged = isBecause(verdict, 'efflux-no-window') && asks[0] === 'look' && readyToMeasure;
  return first(next(`look at how it flows${isOnlyLogged ? ': no window of seconds is set yet' : ''}`));
};

/** What to read next, once it is stirred, and why. */
const measure = (verdict: Verdict): Text => {
  const { rule, reasons, gravity, readyToMeasure } = verdict;
  const next = (what: string): string =>
    readyToMeasure ? `Now ${what}` : `Stir it to the bottom, then ${what}`;
  const ended = rule === 'void' ? reasons.find(({ because }) => because === 'void') : undefined;
  if (ended?.because === 'void')
    return t`${[next('measure it, weight and flow')]}: ${[voided[ended.by]]} after the last reading.`;
  const isOdd = isBecause(verdict, 'unexpected');
  if (gravity?.believed === false && !isOdd)
    return t`${[next('measure it')]}: no stir was logged just before the last reading.`;
  switch (rule) {
    case 'never-measured':
      return t`${[next('weigh a cup of it')]}: it was never measured. Change nothing before that.`;
    case 'stale':
      return t`${[next('measure it')]}: the last reading is too old.`;
    case 'changed':
    case 'changed-unknown':
      return t`${[next('measure it before anything else')]}: something went in or came out since the last reading.`;
    case 'weigh-first':
      if (isBecause(verdict, 'just-mixed') && verdict.readyToMeasure)
        return t`Let the air rise out for a few minutes, then weigh a cup of it and time the flow cup. Take no water out.`;
      return isOdd
        ? t`Weigh a second cup first: this one does not fit what was logged. Change nothing before that.`
        : t`${[next('weigh a cup of it and time the flow cup')]}. Change nothing before that.`;
    case 'unsure':
      return t`Measure more exactly before you change anything: this reading can't tell whether gravity is inside its window.`;
    default:
      return lookNext(verdict, next);
  }
};

/** Whether a quarter of a window or less lies between a reading and an end of it, or it is outside. */
const isNearEdge = ({ reasons }: Verdict): boolean =>
  reasons.some((one) => {
    if (one.because !== 'gravity' && one.because !== 'efflux') return false;
    const value = one.because === 'gravity' ? one.value : (one.warmth?.seconds ?? one.seconds);
    const { low, high } = one.window;
    return value === 'wont-run' || Math.min(value - low, high - value) <= (high - low) / 4;
  });

/** Where drawn water would take flux along. */
const evaporate = (water: Pour | undefined): Text =>
  water
    ? t`Too much water. Let ${[water.amount]} of it evaporate${[water.each]}, with the lid off. Drawing it off would take flux away.`
    : t`Too much water. Let it evaporate, with the lid off. Drawing it off would take flux away.`;

const asked = (verdict: Verdict, measures: Measures): Text => {
  const { units } = measures;
  if (verdict.rule === 'no-window')
    return verdict.gravity
      ? t`It reads ${[gravityText(verdict.gravity.value)]}, and no window is set yet. The keepers see it on their round. Until they decide, try a test tile.`
      : t`A keeper first has to set what gravity it should have.`;
  if (verdict.rule === 'unsettled')
    return t`The readings don't agree. Change nothing, and ask a keeper to weigh it with another cup.`;
  if (verdict.rule === 'never-sieved')
    return t`There are lumps, and this glaze is never sieved. Ask a keeper.`;
  const stop = verdict.reasons.find(isStop);
  if (stop) return stopped(stop, verdict.keeperStep === undefined);
  if (isBecause(verdict, 'gels-by-itself'))
    return t`It gelled, as borate glazes do by themselves. Add nothing. Ask its keeper.`;
  if (isBecause(verdict, 'own-thickener'))
    return t`It flows too ${[verdict.flow === 'thin' ? 'thin' : 'thick']} for its window. Ask a keeper; add nothing.`;
  if (isBecause(verdict, 'no-way-to-look'))
    return t`A keeper first has to set its window of seconds. Time the flow cup now: that shows what they could be.`;
  const drawn = drawnOff(verdict.amounts, units);
  const dry = powder(verdict.amounts, measures);
  switch (verdict.keeperStep) {
    case 'draw-off-water':
      if (verdict.cautions.includes('drawn-flux')) return evaporate(drawn);
      return drawn && dry
        ? t`Too much water in it. Ask a keeper to draw off ${[drawn.amount]} of clear water, or to stir in ${[dry.amount]} of dry batch${[dry.each]}.`
        : t`Too much water in it. Ask a keeper to draw some clear water off.`;
    case 'add-dry':
      return dry
        ? t`It gelled, and water was added. Ask a keeper to stir in ${[dry.amount]} of dry batch${[dry.each]}, then deflocculant.`
        : t`It gelled, and water was added. Ask a keeper.`;
    case 'deflocculate':
      return t`Thick, but not for lack of water. Ask a keeper. Don't add water.`;
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
  const fits = waterText(waterMl ?? 0, units);
  const left = waterText(waterMlLeft ?? 0, units);
  // A rest of less than a tenth is less than the error of pouring.
  if ((waterMlLeft ?? 0) < 0.1 * (waterMl ?? 0))
    return t`Add ${[fits]} of water, all that fits with room to stir, then stir and measure.`;
  return handWater(waterMl ?? 0, units) > 0
    ? t`Add ${[fits]} of water, all that fits with room to stir, then stir and measure. It needs ${[left]} more.`
    : t`It needs ${[left]} of water, but the pail is too full: ladle some glaze out first.`;
};

/** From this chance up, the answer does not mention the chance. */
const wellSure = 0.945;

/** A reading of now that leaves some doubt, with what the doubt comes from. */
const useInDoubt = (verdict: Verdict, odds: string): Text => {
  if (verdict.gravity?.believed === false)
    return t`Use it. The last weighing doesn't fit the others. Even so, the chance that it is right is ${[odds]}.`;
  if (isBecause(verdict, 'disagree'))
    return t`Use it. Cup and finger disagree, and the cup counts: the chance that it is right is ${[odds]}.`;
  return isNearEdge(verdict)
    ? t`Use it. It is near the edge of its window: the chance that it is right is ${[odds]}.`
    : t`Use it: the chance that it is right is ${[odds]}.`;
};

/** What was not read just now is told with its age, and how likely it still holds. */
const use = (verdict: Verdict): Text => {
  const { reasons, flow } = verdict;
  const sure = reasons.find(({ because }) => because === 'sure');
  if (sure?.because === 'sure' && sure.seenNow && (sure.both ?? sure.gravity) < wellSure)
    return useInDoubt(verdict, oddsText(sure.both ?? sure.gravity));
  if (flow === 'thin' || flow === 'thick')
    return reasons.some(({ because }) => because === 'efflux')
      ? t`Use it. Its cup time is a little outside its window, but by less than a cup can tell.`
      : t`Use it. It looks ${[flow]}, but all readings together say that it is right.`;
  if (sure?.because !== 'sure' || sure.seenNow || sure.weighed === undefined)
    return t`Use it. Gravity and flow are where they should be.`;
  return t`Use it. It was weighed ${{ at: sure.weighed, show: 'ago' }}, and the chance that it is still right is ${[oddsText(sure.both ?? sure.gravity)]}.`;
};

export const addWater = ({ amount, each }: Pour, half: boolean): Text =>
  t`Add ${[amount]} of water${[each]}${[half ? ', half of what it needs' : '']}, stir, then measure.`;

/** The answer in a line that stands alone on a locked phone. */
export const verdictTitle = (verdict: Verdict, measures: Measures): Text => {
  const { units } = measures;
  const pouring = water(verdict.amounts, units);
  switch (verdict.step) {
    case 'on-hold':
      return verdict.rule === 'retired' ? t`This bucket is retired. Don't use it.` : held(verdict);
    case 'sieve':
      return verdict.reasons.some((one) => one.because === 'unsieved' && one.what === 'frozen')
        ? t`It was frozen. Once it has thawed, sieve it first.`
        : t`Sieve it first.`;
    case 'stir':
      return verdict.rule === 'cake'
        ? t`Scrape up the bottom and power-mix it. Don't add water.`
        : verdict.rule === 'stir-again'
          ? t`Stir it once more to the bottom, then use it.`
          : t`Stir it first, to the bottom. Don't add water.`;
    case 'measure':
      return measure(verdict);
    case 'use':
      if (verdict.rule === 'no-window-needed') return t`Use it: it is stirred.`;
      if (isBecause(verdict, 'flow-not-judged') && !verdict.dont.includes('use-unstirred'))
        return t`Use it. Gravity is where it should be.`;
      return verdict.dont.includes('use-unstirred')
        ? t`Stir in what was added, then use it. Gravity should still be right.`
        : use(verdict);
    case 'add-water':
      if (!pouring) return t`It needs water.`;
      if (verdict.amounts.waterMlLeft !== undefined) return overfull(verdict.amounts, units);
      return verdict.then === 'flocculate' && !verdict.dont.includes('all-at-once')
        ? t`Add ${[pouring.amount]} of water${[pouring.each]}, stir, then look at the flow again.`
        : addWater(pouring, verdict.dont.includes('all-at-once'));
    case 'draw-off-water': {
      const drawn = drawnOff(verdict.amounts, units);
      const dry = powder(verdict.amounts, measures);
      if (verdict.cautions.includes('drawn-flux')) return evaporate(drawn);
      return drawn && dry
        ? t`Too much water. Let it rest, draw off ${[drawn.amount]} of clear water, or stir in ${[dry.amount]} of dry batch${[dry.each]}.`
        : t`Too much water. Let it rest and draw clear water off.`;
    }
    case 'add-dry': {
      const dry = powder(verdict.amounts, measures);
      return dry
        ? t`It gelled, and water was added. Stir in ${[dry.amount]} of dry batch${[dry.each]}, then deflocculate.`
        : t`It gelled, and water was added. It needs dry batch, then deflocculant.`;
    }
    case 'flocculate': {
      const small = dose(verdict.amounts, units);
      return small
        ? t`Thin, but not watery: add ${[small.amount]} of flocculant solution${[small.each]}, stir, wait 10 minutes, look again. Take no water out.`
        : t`Thin, but not watery: it needs flocculant, in small doses. Take no water out.`;
    }
    case 'stir-on':
      return t`Keep stirring for 5 minutes, then look again. Don't add water.`;
    case 'deflocculate':
      return jarTest(verdict.amounts, units);
    case 'ask-keeper':
      return asked(verdict, measures);
  }
};
