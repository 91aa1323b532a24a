import { present } from '../../present.ts';
import { pressToEdit, pressToRun } from '../../contract/replyParts.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { CorrectionFound as Found, CorrectionWay } from '../../studio/batch/correctBucket.ts';
import { handPowder, handWater, powderText, waterText, type Measures } from '../../words/text/hand.ts';
import { handAmount, volumeText } from '../../words/text/measures.ts';
import { pour } from '../../words/text/pour.ts';
import type { Action, Asking } from '../../contract/contract.ts';

/** The single amount of a correction, as the answer shows it and as it is logged. */
export const correctionAmount = (way: CorrectionWay, found: Found, measures: Measures) => {
  const { amounts } = found;
  const { units } = measures;
  const [value, perLitre] = {
    water: [amounts.waterMl, amounts.waterMlPerLitre],
    'draw-off': [amounts.drawOffMl, amounts.drawOffMlPerLitre],
    evaporate: [amounts.drawOffMl, amounts.drawOffMlPerLitre],
    dry: [amounts.dryGrams, amounts.dryGramsPerLitre],
    blend: [amounts.blendMl, undefined],
  }[way];
  const unit = way === 'dry' ? 'g' : 'ml';
  const known = value !== undefined || found.expected !== undefined;
  const inHand = (amount: number) => {
    if (way === 'dry') return handPowder(amount, measures);
    return way === 'blend' ? handAmount(amount) : handWater(amount, units);
  };
  const text = (amount: number) => {
    if (way === 'dry') return powderText(amount, measures);
    return way === 'blend' ? volumeText(handAmount(amount), units) : waterText(amount, units);
  };
  const hand = inHand(value ?? 0);
  const poured = pour(value, known ? undefined : perLitre, units, text) ?? { amount: text(0), each: '' };
  return { poured, hand, typed: `${hand}${unit}`, known };
};

/** Buttons for what a member probably does next about a correction. */
export const correctionActions = (
  way: CorrectionWay,
  found: Found,
  {
    bucket: state,
    other,
    measures,
  }: { bucket: BucketState; other: BucketState | undefined; measures: Measures },
  asking: Asking,
): Action[] => {
  const { words, role } = asking;
  const press = (label: Action['label'], path: string, typed: Record<string, string>): Action =>
    pressToRun(label, path, { bucket: String(state.no), ...typed }, state.seq);
  const { poured, hand, typed, known } = correctionAmount(way, found, measures);
  const shown = poured.amount;
  const w = words.verdict;
  const mayPour = known && hand > 0 && (role === 'keeper' || way === 'water' || way === 'blend');
  const done = {
    water: () => press(w.poured(shown), 'added', { what: 'water', amount: typed }),
    'draw-off': () => press(w.drewOff(shown), 'added', { what: 'draw-off', amount: typed }),
    // Evaporation adds nothing to the bucket: the next reading shows it.
    evaporate: () => undefined,
    dry: () => press(w.stirredIn(shown), 'added', { what: 'dry', amount: typed }),
    blend: () =>
      press(words.batch.pouredIn(shown), 'added', {
        what: 'glaze',
        amount: typed,
        ...(other && { from: String(other.no) }),
      }),
  };
  const { ladleMl } = found.amounts;
  const ladled = (): Action => {
    const out = handAmount(ladleMl ?? 0);
    return press(words.correct.ladled(volumeText(out, measures.units)), 'added', {
      what: 'taken',
      amount: `${out}ml`,
    });
  };
  const doneNow = mayPour ? (ladleMl === undefined ? done[way]() : ladled()) : undefined;
  return present([
    found.first.includes('sieve') && press(w.sievedIt, 'sieved', {}),
    found.first.includes('stir') && press(w.stirredIt, 'stirred', {}),
    doneNow,
    pressToEdit(w.measureIt, 'reading', { bucket: String(state.no) }),
  ]).slice(0, 3);
};
