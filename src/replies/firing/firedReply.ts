import { present } from '../../present.ts';
import { fact, pressToEdit, pressToRead, pressToRun } from '../../contract/replyParts.ts';
import { problemsAtDip } from '../../studio/firing/problemsAtDip.ts';
import { definedOnly } from '../../definedOnly.ts';
import type { BucketThen } from '../../studio/firing/bucketThen.ts';
import type { Dip } from '../../studio/firing/dip.ts';
import { isOfFit, type Fault } from '../../studio/firing/firedEvent.ts';
import { hours, since, type Instant } from '../../studio/ids.ts';
import { prepSteps } from '../../studio/piece/pieceEvent.ts';
import type { Text } from '../../words/text/text.ts';
import type { Words } from '../../words/words.ts';
import type { Asking, Reply } from '../../contract/contract.ts';
import { isoInstant } from '../../studio/time/isoInstant.ts';

/** The most causes named on the first line. */
const mostAmiss = 2;

/** Faults of fit between glaze and body are not the bucket's, and a good result is no fault. */
const isBlamed = ({ faults }: Dip['result']['said']) => faults.some((fault) => !isOfFit(fault));

const titleOf = (
  { result: { said }, dipped, buckets, conditions }: Dip,
  name: string,
  words: Words,
): Text => {
  const w = words.fired;
  const ofFit = said.faults.filter(isOfFit);
  const blamed = isBlamed(said) && dipped;
  const asksHour = buckets.some(({ varied }) => varied);
  return [
    ...w.kept(said, name),
    ...(blamed
      ? buckets.flatMap((one) => w.was(one.name, problemsAtDip(one, dipped.from).slice(0, mostAmiss)))
      : []),
    ...(blamed && conditions['resist-damp'] === true ? w.damp : []),
    ...(asksHour ? w.whatHour : []),
    ...(ofFit.length > 0 ? w.ofFit(ofFit) : []),
  ];
};

const factsOf = (
  { gravity, flow, stirredAt, restLimit, conditions }: BucketThen,
  dipped: Instant,
  { fired: w }: Words,
): NonNullable<Reply['facts']> =>
  present([
    fact(w.factGravity, gravity ? w.gravity(gravity) : w.noGravity(conditions.unmeasured)),
    flow && fact(w.factFlow, w.flow(flow)),
    fact(
      w.factStir,
      conditions.rested === undefined
        ? w.stirUnknown
        : stirredAt === undefined
          ? w.neverStirred
          : w.stir(since(stirredAt, dipped) / hours(1), restLimit / hours(1), conditions.rested),
    ),
  ]);

/** The result as the program understood it, so that a typing error shows. */
const understoodResult = ({ result: { said }, dipped, body }: Dip, { fired: w }: Words): Text =>
  w.understood(dipped, w.firedTo(said.cone, said.kiln, body));

const dippedReasons = ({ dipped, after }: Dip, { fired: w }: Words): Text[] => {
  if (!dipped) return [w.notDated];
  if (after !== undefined) return [w.dippedAfter(after)];
  return dipped.from === dipped.to ? [] : [w.dippedOn];
};

/** What is not known about the bucket at the time of the dip. */
const unknownAtDip = ({ gravity, flow, conditions }: BucketThen): ('gravity' | 'flow' | 'stir')[] => [
  ...(gravity ? [] : (['gravity'] as const)),
  ...(flow ? [] : (['flow'] as const)),
  ...(conditions.rested === undefined ? (['stir'] as const) : []),
];

const bucketReasons = (one: BucketThen, dipped: Instant, told: number, { fired: w }: Words): Text[] => {
  const wrong = problemsAtDip(one, dipped);
  const more = wrong.slice(told);
  const unknown = unknownAtDip(one);
  return present([
    more.length > 0 && w.and(one.name, more),
    ...one.outside.map((read) => w.outside(one.name, read)),
    unknown.length > 0 && w.cannotTell(one.name, unknown),
    wrong.length === 0 && one.outside.length === 0 && (unknown.length > 0 ? w.nothingElse : w.fine(one.name)),
    one.sievedAt !== undefined &&
      one.conditions['not-sieved'] === false &&
      w.sieved(one.name, since(one.sievedAt, dipped) / hours(1)),
    one.conditions['not-sieved'] === true && w.notSieved(one.name),
  ]);
};

const pieceReasons = (dip: Dip, { fired: w }: Words): Text[] => {
  const { bisque, done, planned, resistReady, conditions } = dip;
  return present([
    resistReady &&
      w.resist(conditions['resist-damp'], resistReady === 'never' ? undefined : resistReady.readyAt),
    done &&
      planned &&
      w.steps(
        done,
        prepSteps.filter((step) => planned.includes(step)),
      ),
    bisque && w.bisqueWas(bisque),
  ]);
};

const firedData = ({
  result: { id, said },
  dipped,
  after,
  buckets: [first],
  conditions,
}: Dip): Reply['data'] => {
  const { bucket, over, faults, pieces } = said;
  const { gravity, flow = null, stirredAt } = first ?? {};
  const faulty = faults.length === 0 ? 0 : (said.faulty ?? pieces);
  const sinceStir = stirredAt !== undefined && dipped ? since(stirredAt, dipped.from) / hours(1) : null;
  return definedOnly({
    entry: id,
    bucket,
    over,
    faults,
    pieces,
    faulty: pieces === undefined ? undefined : faulty,
    dipped: dipped && { from: isoInstant(dipped.from), to: isoInstant(dipped.to) },
    after,
    gravity: gravity && { value: gravity.value, u95: gravity.u95, predicted: gravity.predicted },
    window: gravity && { ...gravity.window },
    flow: first && flow,
    hoursSinceStir: first && dipped && sinceStir,
    conditions: { ...conditions },
  });
};

/** The faults whose note has another name. */
const notesOfFaults: Partial<Record<Fault, string>> = {
  'too-thin': 'thin-coat',
  'too-thick': 'thick-coat',
  dull: 'colour-wrong',
  'off-colour': 'colour-wrong',
};

/** A firing result, and what the logbook knows about its dip. */
export const firedReply = (
  dip: Dip,
  bucketName: string,
  { words, typed, handbook }: Pick<Asking, 'words' | 'typed' | 'handbook'>,
): Reply => {
  const { result, dipped, buckets } = dip;
  const { fired: w } = words;
  const [first] = buckets;
  const { faults } = result.said;
  const note = faults[0] && handbook.note(notesOfFaults[faults[0]] ?? faults[0]);
  const told = isBlamed(result.said) ? mostAmiss : 0;
  return {
    kind: 'answer',
    title: titleOf(dip, bucketName, words),
    logged: { entry: result.id, text: understoodResult(dip, words) },
    facts: first && dipped ? factsOf(first, dipped.from, words) : [],
    cautions: present(faults.map((fault) => w.cautions[fault])),
    reasons: present([
      ...dippedReasons(dip, words),
      dipped && !first && w.tooEarly(bucketName),
      ...(dipped ? buckets.flatMap((one) => bucketReasons(one, dipped.from, told, words)) : []),
      ...pieceReasons(dip, words),
      ...faults.map((fault) => w.next[fault]),
    ]),
    actions: present([
      buckets.some(({ varied }) => varied) &&
        pressToEdit(w.sayHour, 'fired', { ...typed, instead: result.id }),
      pressToRun(w.takeBack, 'undo', { entry: result.id }),
      note && pressToRead(note.title, words),
    ]),
    data: firedData(dip),
  };
};
