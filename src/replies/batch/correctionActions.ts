import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { CorrectionFound as Found, CorrectionWay } from '../../studio/batch/correctBucket.ts';
import type { UnitSystem } from '../../studio/settings/studio.ts';
import { handAmount, massText, volumeText } from '../../words/text/measures.ts';
import { pour } from '../../words/text/pour.ts';
import type { Action, Asking } from '../../contract/contract.ts';
import { printLine } from '../../contract/parseLine.ts';

/** The one amount of a way, as it stands in an answer and as it is logged. */
export const correctionAmount = (way: CorrectionWay, found: Found, units: UnitSystem) => {
  const { amounts } = found;
  const [value, perLitre] = {
    water: [amounts.waterMl, amounts.waterMlPerLitre],
    'draw-off': [amounts.drawOffMl, amounts.drawOffMlPerLitre],
    evaporate: [amounts.drawOffMl, amounts.drawOffMlPerLitre],
    dry: [amounts.dryGrams, amounts.dryGramsPerLitre],
    blend: [amounts.blendMl, undefined],
  }[way];
  const unit = way === 'dry' ? 'g' : 'ml';
  const known = value !== undefined || found.expected !== undefined;
  const hand = handAmount(value ?? 0);
  const text = (amount: number) => (unit === 'g' ? massText : volumeText)(handAmount(amount), units);
  const poured = pour(value, known ? undefined : perLitre, units, text) ?? { amount: text(0), each: '' };
  return { poured, hand, typed: `${hand}${unit}`, known };
};

/** What somebody is likely to do next about a correction, as a press. */
export const correctionActions = (
  way: CorrectionWay,
  found: Found,
  { bucket: state, other, units }: { bucket: BucketState; other: BucketState | undefined; units: UnitSystem },
  asking: Asking,
): Action[] => {
  const { words, role } = asking;
  const press = (label: Action['label'], path: string, typed: Record<string, string>): Action => ({
    label,
    line: printLine([path], { bucket: String(state.no), ...typed }, state.seq),
    press: 'run',
  });
  const { poured, hand, typed, known } = correctionAmount(way, found, units);
  const shown = poured.amount;
  const w = words.verdict;
  const mayPour = known && hand > 0 && (role === 'keeper' || way === 'water' || way === 'blend');
  const done = {
    water: () => press(w.poured(shown), 'added', { what: 'water', amount: typed }),
    'draw-off': () => press(w.drewOff(shown), 'added', { what: 'draw-off', amount: typed }),
    // Nothing is poured: what is gone shows in the next reading.
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
    return press(words.correct.ladled(volumeText(out, units)), 'added', {
      what: 'taken',
      amount: `${out}ml`,
    });
  };
  const doneNow = mayPour ? (ladleMl === undefined ? done[way]() : ladled()) : undefined;
  return [
    ...(found.first.includes('sieve') ? [press(w.sievedIt(), 'sieved', {})] : []),
    ...(found.first.includes('stir') ? [press(w.stirredIt(), 'stirred', {})] : []),
    ...(doneNow ? [doneNow] : []),
    {
      label: w.measureIt(),
      line: printLine(['reading'], { bucket: String(state.no) }),
      press: 'edit' as const,
    },
  ].slice(0, 3);
};
