import { definedOnly } from '../../definedOnly.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { believedAfterStir } from '../bucket/fold/applyReading.ts';
import { isFlagged } from '../bucket/withoutFlagged.ts';
import { since } from '../ids.ts';
import type { Sureness } from './chooseByChance.ts';
import type { Facts } from './facts.ts';
import { judgesFlow } from './judgedBy.ts';
import type { FlowBand, Reason, Step, Verdict } from './verdict.ts';

const knownFlow = (band: FlowBand) => (band === 'unknown' ? null : band);

type Decided = Pick<Verdict, 'step' | 'rule' | 'asks' | 'amounts' | 'reasons' | 'dont' | 'cautions'> & {
  then: Step | undefined;
  keeperStep: Step | undefined;
};

const isReadyToMeasure = ({ state: { stir }, now }: Facts): boolean =>
  stir !== undefined && !stir.addedSince && since(stir.at, now) <= believedAfterStir;

/**
 * The verdict: what was decided, and the bucket's readings. Field by field, because spreading them costs more than
 * deciding.
 */
export const verdictOn = (f: Facts, gravity: Verdict['gravity'], decided: Decided): Verdict => {
  const { state } = f;
  const verdict: Verdict = {
    step: decided.step,
    rule: decided.rule,
    asks: decided.asks,
    gravity: gravity && isFlagged(state) ? { ...gravity, believed: false } : gravity,
    predicted: f.predicted ?? null,
    window: state.settings.gravity ?? null,
    flow: judgesFlow(state.settings) ? knownFlow(f.flow.band) : null,
    gravityBand: f.measured && !state.voided ? f.measured.band : null,
    hoursSinceStir: f.hoursSinceStir ?? null,
    readyToMeasure: isReadyToMeasure(f),
    bucket: state.no,
    after: state.seq,
    amounts: decided.amounts,
    reasons: decided.reasons,
    dont: decided.dont,
    cautions: decided.cautions,
  };
  if (decided.then) verdict.then = decided.then;
  if (decided.keeperStep) verdict.keeperStep = decided.keeperStep;
  return verdict;
};

export const asRead = (reading: BucketState['believed'], believed: boolean): Verdict['gravity'] =>
  reading ? { value: reading.value, u95: reading.u95, believed } : null;

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
