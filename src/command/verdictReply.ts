import type { Entry } from '../studio/bucketEvent.ts';
import type { BucketState } from '../studio/bucketState.ts';
import { barehanded } from '../studio/barehanded.ts';
import { decide } from '../studio/decide.ts';
import type { Studio } from '../studio/studio.ts';
import type { Verdict } from '../studio/verdict.ts';
import { handAmount, volumeText, massText } from '../words/measures.ts';
import type { Text } from '../words/text.ts';
import type { Words } from '../words/words.ts';
import type { Action, Asking, Reply } from './contract.ts';
import { printLine } from './parseLine.ts';

const action = (label: Text, path: string, typed: Record<string, string>, verdict: Verdict): Action => ({
  label,
  line: printLine([path], { bucket: String(verdict.bucket), ...typed }, verdict.after),
  press: 'run',
});

/** What somebody is likely to do next, as a press. */
const actions = (verdict: Verdict, { words, role }: Asking, { units }: Studio): Action[] => {
  const w = words.verdict;
  const added = (what: string, amount: string, label: Text) =>
    action(label, 'added', { what, amount }, verdict);
  const { waterMl, drawOffMl, dryGrams, doseMl } = verdict.amounts;
  const poured = handAmount(waterMl ?? 0);
  const measure: Action = {
    label: w.measureIt(),
    line: printLine(['reading'], { bucket: String(verdict.bucket) }),
    press: 'edit',
  };
  const ladled: Action = {
    label: w.ladled(),
    line: printLine(['added'], { bucket: String(verdict.bucket), what: 'taken' }),
    press: 'edit',
  };
  const stirred = action(w.stirredIt(), 'stirred', {}, verdict);
  switch (verdict.step) {
    case 'stir':
      return verdict.rule === 'cake'
        ? [action(w.cakeGone(), 'stirred', { with: 'mixer', seen: 'cake-gone' }, verdict), measure]
        : [stirred, measure];
    case 'sieve':
      return [action(w.sievedIt(), 'sieved', {}, verdict)];
    case 'measure':
      return [measure];
    case 'add-water':
      return [
        ...(poured > 0 ? [added('water', `${poured}ml`, w.poured(volumeText(poured, units)))] : []),
        ...(verdict.amounts.waterMlLeft === undefined ? [] : [ladled]),
        measure,
      ];
    case 'draw-off-water':
    case 'add-dry': {
      const drawn = handAmount(drawOffMl ?? 0);
      const dry = handAmount(dryGrams ?? 0);
      return [
        ...(drawn > 0 && verdict.step === 'draw-off-water'
          ? [added('draw-off', `${drawn}ml`, w.drewOff(volumeText(drawn, units)))]
          : []),
        ...(dry > 0 ? [added('dry', `${dry}g`, w.stirredIn(massText(dry, units)))] : []),
        measure,
      ];
    }
    case 'flocculate': {
      const dose = Number((doseMl ?? 0).toFixed(doseMl !== undefined && doseMl < 2.5 ? 2 : 1));
      return dose > 0 ? [added('flocculant', `${dose}ml`, w.dosed(`${dose} ml`)), measure] : [measure];
    }
    case 'stir-on':
      return [action(w.stirredOn(), 'stirred', { minutes: '3' }, verdict), measure];
    case 'on-hold':
      return role === 'keeper' && verdict.rule === 'on-hold'
        ? [action(w.release(), 'bucket release', {}, verdict)]
        : [];
    case 'use':
    case 'deflocculate':
    case 'ask-keeper':
      return [];
  }
};

/** At most three facts that a step rests on. */
const factsOf = (verdict: Verdict, { words }: Asking): NonNullable<Reply['facts']> => {
  const w = words.verdict;
  const { gravity, flow, hoursSinceStir, window, predicted } = verdict;
  const foretold = gravity?.believed && verdict.rule !== 'changed' ? null : predicted;
  return [
    ...(gravity
      ? [
          {
            label: [w.factGravity],
            text: gravity.believed
              ? w.gravityFact(gravity.value, gravity.u95, window)
              : w.notBelieved(gravity.value),
          },
        ]
      : []),
    ...(foretold
      ? [{ label: [w.factPredicted], text: w.gravityFact(foretold.value, foretold.u95, null) }]
      : []),
    // What is predicted stands where the flow of before would say nothing of now.
    ...(flow && !foretold ? [{ label: [w.factFlow], text: w.flowFact(flow) }] : []),
    {
      label: [w.factStir],
      text: hoursSinceStir === null ? w.neverStirred() : w.stirredAgo(hoursSinceStir),
    },
  ];
};

const verdictData = ({ amounts, ...verdict }: Verdict): Reply['data'] => ({
  step: verdict.step,
  rule: verdict.rule,
  ...(verdict.then && { then: verdict.then }),
  ...(verdict.keeperStep && { keeperStep: verdict.keeperStep }),
  gravity: verdict.gravity,
  predicted: verdict.predicted,
  window: verdict.window && { low: verdict.window.low, high: verdict.window.high },
  gravityBand: verdict.gravityBand,
  flow: verdict.flow,
  hoursSinceStir: verdict.hoursSinceStir,
  ...amounts,
  after: verdict.after,
});

/** What was logged and what is to be done may warn of the same thing. */
const onceEach = (cautions: readonly Text[]): Text[] => [
  ...new Map(cautions.map((caution) => [JSON.stringify(caution), caution])).values(),
];

/** How to take the reading that is asked for now: a weight, a look at the flow, or both. */
const howToMeasure = ({ step, rule, flow }: Verdict, bare: boolean, { verdict: w }: Words): Text[] => {
  if (step !== 'measure' && step !== 'stir-on') return [];
  const look = [w.protocolCup(), bare ? w.protocolFinger() : w.protocolFingerGloved()];
  if (rule === 'grid') return look;
  return [w.protocolWeigh(), ...(flow === null ? look : [])];
};

/** What was just logged, as it was understood, so that a slip shows. */
interface JustLogged {
  entry: Entry;
  /** Said before the answer, when the answer alone would not tell that it was done. */
  first?: Text;
  reasons?: Text[];
  cautions?: Text[];
  data?: Reply['data'];
}

/** The verdict on a bucket as a reply. */
export const verdictReply = async (
  state: BucketState,
  asking: Asking,
  logged?: JustLogged,
): Promise<Reply> => {
  const { words, now, role, book } = asking;
  const verdict = decide(state, { now, role });
  const studio = await book.studio();
  // Names are asked for only where one is said: every verdict would pay for them.
  const named = verdict.reasons.some(({ because }) => because === 'held');
  const members = new Map((named ? await book.members() : []).map(({ id, name }) => [id, name]));
  const cake = state.cake?.since;
  const setting = {
    units: studio.units,
    ...(cake !== undefined && { cakeSince: cake }),
    member: (id: Asking['member']) => ({ member: id, name: members.get(id) ?? words.someone }),
  };
  const protocol = howToMeasure(verdict, barehanded(state.settings), words);
  return {
    kind: 'answer',
    title: [
      ...(logged?.first ? [...logged.first, ' '] : []),
      ...words.verdict.headline(state.settings.name, words.verdict.title(verdict, studio.units)),
    ],
    facts: factsOf(verdict, asking),
    dont: verdict.dont.map(words.verdict.dont),
    cautions: onceEach([...(logged?.cautions ?? []), ...verdict.cautions.map(words.verdict.caution)]),
    reasons: [
      ...(logged ? [words.log.logged(logged.entry, studio.units)] : []),
      ...(logged?.reasons ?? []),
      ...(verdict.then ? [words.verdict.afterThat(verdict.then)] : []),
      ...verdict.reasons.map((reason) => words.verdict.reason(reason, setting)),
      ...protocol,
    ],
    actions: actions(verdict, asking, studio).slice(0, 3),
    data: {
      ...(logged && { entry: logged.entry.id }),
      ...logged?.data,
      bucket: state.no,
      verdict: verdictData(verdict),
    },
  };
};
