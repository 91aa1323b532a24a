import { barehanded } from '../../studio/settings/barehanded.ts';
import type { BucketSettings } from '../../studio/settings/bucketSettings.ts';
import type { Studio } from '../../studio/settings/studio.ts';
import type { Verdict } from '../../studio/verdict/verdict.ts';
import { handPowder, handWater, powderText, waterText } from '../../words/text/hand.ts';
import type { Words } from '../../words/words.ts';
import { handDose } from '../../words/text/doseText.ts';
import type { Text } from '../../words/text/text.ts';
import type { Action, Asking } from '../../contract/contract.ts';
import { printLine } from '../../contract/parseLine.ts';

const action = (label: Text, path: string, typed: Record<string, string>, verdict: Verdict): Action => ({
  label,
  line: printLine([path], { bucket: String(verdict.bucket), ...typed }, verdict.after),
  press: 'run',
});

/** As many drops as ran right in the jar, and one more: a press logs what that is in the pail. */
export const loosened = (verdict: Verdict, { verdict: w }: Pick<Words, 'verdict'>): Action[] => {
  const jar = verdict.reasons.find(({ because }) => because === 'jar-test');
  if (jar?.because !== 'jar-test' || jar.each === undefined) return [];
  const { drops, most, each } = jar;
  return [drops, drops + 1]
    .filter((one) => one <= most)
    .map((one) => {
      const ml = `${handDose(one * each)}ml`;
      return action(
        w.loosened(`${handDose(one * each)} ml`, one),
        'added',
        { what: 'deflocculant', amount: ml },
        verdict,
      );
    });
};

/** The handbook's note on gels. */
const gelNote = ({ verdict: w }: Pick<Words, 'verdict'>): Action => ({
  label: w.askOfGels,
  line: printLine(['ask'], { question: 'borate glaze gels by itself' }),
  press: 'run',
});

/** Buttons for what a member probably does next. */
export const verdictActions = (
  verdict: Verdict,
  settings: BucketSettings,
  { words, role }: Pick<Asking, 'words' | 'role'>,
  studio: Pick<Studio, 'units' | 'vessels' | 'scoop'>,
): Action[] => {
  const { units } = studio;
  const mayLook = barehanded(settings);
  const hasPail = settings.pail !== undefined;
  const w = words.verdict;
  const added = (what: string, amount: string, label: Text) =>
    action(label, 'added', { what, amount }, verdict);
  const { waterMl, drawOffMl, dryGrams, doseMl } = verdict.amounts;
  const poured = handWater(waterMl ?? 0, units);
  const measure: Action = {
    label: w.measureIt,
    line: printLine(['reading'], { bucket: String(verdict.bucket) }),
    press: 'edit',
  };
  const ladled: Action = {
    label: w.ladled,
    line: printLine(['added'], { bucket: String(verdict.bucket), what: 'taken' }),
    press: 'edit',
  };
  // Any member may leave the lid off; the other steps may be for keepers.
  const evaporate: Action[] = verdict.cautions.includes('drawn-flux')
    ? [
        {
          label: w.evaporateIt,
          line: printLine(['batch', 'correct'], { bucket: String(verdict.bucket), by: 'evaporate' }),
          press: 'run',
        },
      ]
    : [];
  const surprised = verdict.reasons.some(({ because }) => because === 'unexpected') ? [measure] : [];
  const stirred = action(w.stirredIt, 'stirred', {}, verdict);
  /** One press says how it runs; after a stir it logs both. */
  const looks = (afterStir: boolean): Action[] =>
    (['right', 'thin', 'thick'] as const).map((look) =>
      action(
        afterStir ? w.stirredItRuns(look) : w.itRuns(look),
        afterStir ? 'stirred' : 'reading',
        { look },
        verdict,
      ),
    );
  const levels = ['half', 'two thirds', '90 %'].map((level) =>
    action(w.isFull(level), 'reading', { level }, verdict),
  );
  switch (verdict.step) {
    case 'stir':
      return verdict.rule === 'cake'
        ? [action(w.cakeGone, 'stirred', { with: 'mixer', seen: 'cake-gone' }, verdict), measure]
        : mayLook
          ? looks(true)
          : [stirred, measure];
    case 'sieve':
      return [action(w.sievedIt, 'sieved', {}, verdict)];
    case 'measure':
      return verdict.asks[0] === 'look' && mayLook ? looks(!verdict.readyToMeasure) : [measure];
    case 'add-water':
      if (verdict.asks.includes('level') && hasPail) return levels;
      return [
        ...(poured > 0 ? [added('water', `${poured}ml`, w.poured(waterText(poured, units)))] : []),
        ...(verdict.amounts.waterMlLeft === undefined ? [] : [ladled]),
        measure,
      ];
    case 'draw-off-water':
    case 'add-dry': {
      if (verdict.asks.includes('level') && hasPail && evaporate.length === 0) return levels;
      const drawn = handWater(drawOffMl ?? 0, units);
      const dry = handPowder(dryGrams ?? 0, studio);
      return [
        ...evaporate,
        ...(drawn > 0 && verdict.step === 'draw-off-water'
          ? [added('draw-off', `${drawn}ml`, w.drewOff(waterText(drawn, units)))]
          : []),
        ...(dry > 0 ? [added('dry', `${dry}g`, w.stirredIn(powderText(dry, studio)))] : []),
        measure,
      ];
    }
    case 'flocculate': {
      if (verdict.asks.includes('level') && hasPail) return levels;
      const dose = handDose(doseMl ?? 0);
      return dose > 0 ? [added('flocculant', `${dose}ml`, w.dosed(`${dose} ml`)), measure] : [measure];
    }
    case 'stir-on':
      return [action(w.stirredOn, 'stirred', { minutes: '5' }, verdict), measure];
    case 'on-hold':
      return role === 'keeper' && verdict.rule === 'on-hold'
        ? [action(w.release, 'bucket release', {}, verdict)]
        : [];
    case 'use':
      return verdict.dont.includes('use-unstirred') ? [stirred, ...surprised] : surprised;
    case 'deflocculate': {
      if (verdict.asks.includes('level') && hasPail) return levels;
      return [...loosened(verdict, words), measure];
    }
    case 'ask-keeper':
      if (verdict.asks.includes('level') && hasPail && evaporate.length === 0) return levels;
      return [
        ...evaporate,
        ...surprised,
        ...(verdict.reasons.some(({ because }) => because === 'gels-by-itself') ? [gelNote(words)] : []),
      ];
  }
};
