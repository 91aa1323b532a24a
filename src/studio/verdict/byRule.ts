import type { BucketState } from '../bucket/bucketState.ts';
import type { Sureness } from './chooseByChance.ts';
import type { Facts } from './facts.ts';
import { judgesFlow, judgesGravity } from './judgedBy.ts';
import type { Rule } from './rules.ts';
import type { Asked, Step, Verdict } from './verdict.ts';
import { verdictCautions } from './verdictCautions.ts';
import { asRead, surely, verdictOn } from './verdictOn.ts';

/** What is read of a bucket that is judged by a rule. */
export const readNow = ({ settings }: BucketState): Asked[] =>
  !judgesGravity(settings) ? ['seconds'] : judgesFlow(settings) ? ['weight', 'seconds'] : ['weight'];

/** The verdict that a rule gives. */
export const byRule = (
  f: Facts,
  rule: Rule,
  { asks, sureness, then }: { asks: Asked[]; sureness?: Sureness; then?: Step | undefined },
): Verdict => {
  const { state } = f;
  return verdictOn(
    f,
    asRead(state.unbelieved ?? state.believed, state.unbelieved === undefined && !state.voided),
    {
      step: rule.step,
      rule: rule.name,
      asks,
      then,
      keeperStep: undefined,
      amounts: {},
      reasons: [...rule.because(f), ...(sureness ? surely(sureness, f) : [])],
      dont: rule.dont,
      cautions: verdictCautions(rule.step, state),
    },
  );
};
