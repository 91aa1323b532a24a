import type { BucketState } from '../bucket/bucketState.ts';
import type { Sureness } from './chooseByChance.ts';
import type { Facts } from './facts.ts';
import { judgesFlow, judgesGravity } from './judgedBy.ts';
import type { Applying } from './rules.ts';
import type { Asked, Step, Verdict } from './verdict.ts';
import { verdictCautions } from './verdictCautions.ts';
import { asRead, surely, verdictOn } from './verdictOn.ts';

/** What is read of a bucket that is judged by a rule. */
export const readNow = ({ settings }: BucketState): Asked[] =>
  !judgesGravity(settings) ? ['seconds'] : judgesFlow(settings) ? ['weight', 'seconds'] : ['weight'];

export const byRule = (
  f: Facts,
  { rule: { name, step, dont }, reasons }: Applying,
  { asks, sureness, then }: { asks: Asked[]; sureness?: Sureness; then?: Step | undefined },
): Verdict => {
  const { state } = f;
  return verdictOn(
    f,
    {
      step,
      rule: name,
      asks,
      then,
      reasons: [...reasons, ...(sureness ? surely(sureness, f) : [])],
      dont,
      cautions: verdictCautions(step, state),
    },
    asRead(state.unbelieved ?? state.believed, state.unbelieved === undefined && !state.voided),
  );
};
