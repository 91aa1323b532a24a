import { definedOnly } from '../../definedOnly.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { believedAfterStir } from '../bucket/fold/applyReading.ts';
import { isFlagged } from '../bucket/withoutFlagged.ts';
import { since, type Role } from '../ids.ts';
import type { Sureness } from './chooseByChance.ts';
import type { Facts } from './facts.ts';
import { judgesFlow } from './judgedBy.ts';
import type { FlowBand, Reason, Step, Verdict } from './verdict.ts';

/** A bucket that is judged by how likely it is to be right, and who asks. */
export interface Chance {
  f: Facts;
  role: Role;
  sureness: Sureness;
}

const knownFlow = (band: FlowBand) => (band === 'unknown' ? null : band);

type Decided = Pick<Verdict, 'step' | 'rule' | 'reasons' | 'dont'> &
  Partial<Pick<Verdict, 'asks' | 'amounts' | 'cautions'>> & {
    then?: Step | undefined;
    keeperStep?: Step | undefined;
  };

const isReadyToMeasure = ({ state: { stir }, now }: Facts): boolean =>
  stir !== undefined && !stir.addedSince && since(stir.at, now) <= believedAfterStir;

export const asRead = (reading: BucketState['believed'], believed: boolean): Verdict['gravity'] =>
  reading ? { value: reading.value, u95: reading.u95, believed } : null;

/**
 * The verdict: what was decided, and the bucket's readings. Field by field, because spreading them costs more than
 * deciding. Its gravity is the one that was judged, even when a later, unbelieved reading agrees with it.
 */
export const verdictOn = (f: Facts, decided: Decided, gravity = asRead(f.read, true)): Verdict => {
  const { state } = f;
  const verdict: Verdict = {
    step: decided.step,
    rule: decided.rule,
    asks: decided.asks ?? [],
    gravity: gravity && isFlagged(state) ? { ...gravity, believed: false } : gravity,
    predicted: f.predicted ?? null,
    window: state.settings.gravity ?? null,
    flow: judgesFlow(state.settings) ? knownFlow(f.flow.band) : null,
    gravityBand: f.measured && !state.voided ? f.measured.band : null,
    hoursSinceStir: f.hoursSinceStir ?? null,
    readyToMeasure: isReadyToMeasure(f),
    bucket: state.no,
    after: state.seq,
    amounts: decided.amounts ?? {},
    reasons: decided.reasons,
    dont: decided.dont,
    cautions: decided.cautions ?? [],
  };
  if (decided.then) verdict.then = decided.then;
  if (decided.keeperStep) verdict.keeperStep = decided.keeperStep;
  return verdict;
};

/** How sure one is, as the belief stands, and when it was last weighed. */
export const surely = (
  { chances: { gravity, both }, visit }: Sureness,
  { state: { believed, voided } }: Facts,
): Reason[] =>
  gravity
    ? [
        {
          because: 'sure',
          gravity: gravity.in,
          ...(both !== null && { both }),
          ...definedOnly({ weighed: voided ? undefined : believed?.at }),
          seenNow: visit !== undefined && visit.weighed && (visit.timed || visit.look !== undefined),
        },
      ]
    : [];

/** Its readings against the windows, and how sure they make one. */
export const bandReasons = ({ f, sureness }: Chance): Reason[] => [
  ...(f.measured?.reasons ?? []),
  ...f.flow.reasons,
  ...surely(sureness, f),
];
