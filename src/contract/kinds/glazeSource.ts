import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { Kind } from '../contract.ts';
import { bucket } from './bucket.ts';

/** Where glaze came from: another bucket, or the bucket's own, back from a tray or fresh of the same mix. */
export const glazeSource: Kind<BucketState | 'own'> = {
  ...bucket,
  read: (typed, asking) =>
    /^(?:its\s+)?(?:own|tray)$/i.test(typed.trim()) ? { ok: true, value: 'own' } : bucket.read(typed, asking),
  suggest: async (typed, asking) => [
    ...('own'.startsWith(typed.trim().toLowerCase())
      ? [{ name: asking.words.added.itsOwn, value: 'own' }]
      : []),
    ...((await bucket.suggest?.(typed, asking)) ?? []),
  ],
};
