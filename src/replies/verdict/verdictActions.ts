import { present } from '../../present.ts';
import { pressToEdit, pressToRun } from '../../contract/replyParts.ts';
import { barehanded } from '../../studio/settings/barehanded.ts';
import type { BucketSettings } from '../../studio/settings/bucketSettings.ts';
import type { Studio } from '../../studio/settings/studio.ts';
import type { Reason, Verdict } from '../../studio/verdict/verdict.ts';
import { handPowder, handWater, powderText, waterText } from '../../words/text/hand.ts';
import type { Words } from '../../words/words.ts';
import { handDose } from '../../words/text/doseText.ts';
import type { Text } from '../../words/text/text.ts';
import type { Action, Asking } from '../../contract/contract.ts';

/** Buttons that log something of the verdict's bucket, if nobody has changed it in the meantime. */
const pressOfVerdict =
  ({ bucket, after }: Verdict) =>
  (label: Text, path: string, typed: Record<string, string> = {}): Action =>
    pressToRun(label, path, { bucket: String(bucket), ...typed }, after);

/** As many drops as ran right in the jar, and one more: a press logs what that is in the pail. */
export const loosened = (verdict: Verdict, { verdict: w }: Pick<Words, 'verdict'>): Action[] => {
  const jar = verdict.reasons.find(({ because }) => because === 'jar-test');
  if (jar?.because !== 'jar-test' || jar.each === undefined) return [];
  const { drops, most, each } = jar;
  return [drops, drops + 1]
    .filter((one) => one <= most)
    .map((one) => {
      const ml = handDose(one * each);
      const typed = { what: 'deflocculant', amount: `${ml}ml` };
      return pressOfVerdict(verdict)(w.loosened(`${ml} ml`, one), 'added', typed);
    });
};

/** Amounts for the whole pail come before any of them goes in. */
export const asksHowFull = ({ asks, cautions }: Verdict, { pail }: BucketSettings): boolean =>
  asks.includes('level') && pail !== undefined && !cautions.includes('drawn-flux');

/** Buttons for what a member probably does next. */
export const verdictActions = (
  verdict: Verdict,
  settings: BucketSettings,
  { words, role }: Pick<Asking, 'words' | 'role'>,
  studio: Pick<Studio, 'units' | 'vessels' | 'scoop'>,
): Action[] => {
  const { units } = studio;
  const bucket = String(verdict.bucket);
  const mayLook = barehanded(settings);
  const w = words.verdict;
  const log = pressOfVerdict(verdict);
  const added = (what: string, amount: string, label: Text) => log(label, 'added', { what, amount });
  const { waterMl, drawOffMl, dryGrams, doseMl } = verdict.amounts;
  const measure = pressToEdit(w.measureIt, 'reading', { bucket });
  // Any member may leave the lid off; the other steps may be for keepers.
  const evaporate =
    verdict.cautions.includes('drawn-flux') &&
    pressToRun(w.evaporateIt, 'batch correct', { bucket, by: 'evaporate' });
  const isBecause = (one: Reason['because']) => verdict.reasons.some(({ because }) => because === one);
  const surprised = isBecause('unexpected') && measure;
  const stirred = log(w.stirredIt, 'stirred');
  /** One press says how it runs; after a stir it logs both. */
  const looks = (afterStir: boolean): Action[] =>
    (['right', 'thin', 'thick'] as const).map((look) =>
      afterStir ? log(w.stirredItRuns(look), 'stirred', { look }) : log(w.itRuns(look), 'reading', { look }),
    );
  if (asksHowFull(verdict, settings))
    return ['half', 'two thirds', '90 %'].map((level) => log(w.isFull(level), 'reading', { level }));
  switch (verdict.step) {
    case 'stir':
      return verdict.rule === 'cake'
        ? [log(w.cakeGone, 'stirred', { with: 'mixer', seen: 'cake-gone' }), measure]
        : mayLook
          ? looks(true)
          : [stirred, measure];
    case 'sieve':
      return [log(w.sievedIt, 'sieved')];
    case 'measure':
      return verdict.asks[0] === 'look' && mayLook ? looks(!verdict.readyToMeasure) : [measure];
    case 'add-water': {
      const poured = handWater(waterMl ?? 0, units);
      return present([
        poured > 0 && added('water', `${poured}ml`, w.poured(waterText(poured, units))),
        verdict.amounts.waterMlLeft !== undefined &&
          pressToEdit(w.ladled, 'added', { bucket, what: 'taken' }),
        measure,
      ]);
    }
    case 'draw-off-water':
    case 'add-dry': {
      const drawn = handWater(drawOffMl ?? 0, units);
      const dry = handPowder(dryGrams ?? 0, studio);
      return present([
        evaporate,
        drawn > 0 &&
          verdict.step === 'draw-off-water' &&
          added('draw-off', `${drawn}ml`, w.drewOff(waterText(drawn, units))),
        dry > 0 && added('dry', `${dry}g`, w.stirredIn(powderText(dry, studio))),
        measure,
      ]);
    }
    case 'flocculate': {
      const dose = handDose(doseMl ?? 0);
      return dose > 0 ? [added('flocculant', `${dose}ml`, w.dosed(`${dose} ml`)), measure] : [measure];
    }
    case 'stir-on':
      return [log(w.stirredOn, 'stirred', { minutes: '5' }), measure];
    case 'on-hold':
      return role === 'keeper' && verdict.rule === 'on-hold' ? [log(w.release, 'bucket release')] : [];
    case 'use':
      return present([verdict.dont.includes('use-unstirred') && stirred, surprised]);
    case 'deflocculate':
      return [...loosened(verdict, words), measure];
    case 'ask-keeper':
      return present([
        evaporate,
        surprised,
        isBecause('gels-by-itself') &&
          pressToRun(w.askOfGels, 'ask', { question: 'borate glaze gels by itself' }),
      ]);
  }
};
