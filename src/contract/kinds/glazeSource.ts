import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { Kind } from '../contract.ts';
import { bucket } from './bucket.ts';

/** Where added glaze came from: another bucket, or `own`: back from a tray, or a fresh batch of the same recipe. */
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
