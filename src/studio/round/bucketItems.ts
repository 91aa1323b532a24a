import { withStir } from '../bucket/fold/applyObservations.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import type { Instant } from '../ids.ts';
import { decide } from '../verdict/decide.ts';
import type { Verdict } from '../verdict/verdict.ts';
import type { RoundItem } from './roundItem.ts';
import { unloggedNow } from './unloggedNow.ts';

/** A look or a cup time is whoever’s who uses it next; a weighing that is due is a keeper’s. */
const kindOf = ({ step, rule, asks }: Verdict): 'hold' | 'sieve' | 'reading' | 'step' | undefined => {
  switch (step) {
    case 'on-hold':
      return 'hold';
    case 'sieve':
      return 'sieve';
    case 'measure':
      return asks.includes('weight') ? 'reading' : undefined;
    case 'stir':
      return rule === 'cake' ? 'step' : undefined;
    case 'use':
      return undefined;
    default:
      return 'step';
  }
};

/** What a bucket needs from a keeper. That a rested bucket needs a stir is no news: only what comes after the stir is. */
const needOf = (bucket: BucketState, now: Instant, sure: number | undefined): RoundItem[] => {
  const verdict = decide(bucket, { now, role: 'keeper', sure });
  const rested = verdict.step === 'stir' && verdict.rule !== 'cake';
  const then = rested ? decide(withStir(bucket, { at: now }), { now, role: 'keeper', sure }) : verdict;
  const kind = kindOf(then);
  // What has to come before any reading is told first.
  const comesFirst = kind === 'hold' || kind === 'sieve' || then.rule === 'cake';
  if (bucket.unexpected && !comesFirst) return [{ kind: 'second-cup', bucket, stirFirst: rested }];
  // It is not stirred yet, whatever the verdict after the stir says.
  return kind
    ? [
        {
          kind,
          bucket,
          verdict: { ...then, readyToMeasure: !rested && then.readyToMeasure },
          stirFirst: rested,
        },
      ]
    : [];
};

/** What a bucket has on the round. */
export const bucketItems = (bucket: BucketState, now: Instant, sure: number | undefined): RoundItem[] => {
  if (bucket.retired) return [];
  const change = unloggedNow(bucket, now);
  return [...(change ? [{ kind: 'unlogged' as const, bucket, change }] : []), ...needOf(bucket, now, sure)];
};
