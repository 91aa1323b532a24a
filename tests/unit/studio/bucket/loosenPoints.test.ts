import { describe, expect, it } from 'vitest';
import { gravity, millilitres, seconds } from '../../../../src/glaze/units.ts';
import type { BucketEvent } from '../../../../src/studio/bucket/bucketEvent.ts';
import { foldBucket } from '../../../../src/studio/bucket/fold/foldBucket.ts';
import { nextLoosening } from '../../../../src/studio/dose/nextLoosening.ts';
import { streamNo } from '../../../../src/studio/ids.ts';
import { entriesOf } from '../../../helpers/bucketArbitraries.ts';
import { dippingBucket } from '../../../helpers/glazeRoomLife.ts';

const cup = (timed: number): BucketEvent => ({
  kind: 'reading',
  stirred: true,
  seen: [],
  gravity: { value: gravity(1.44), u95: 0.01, by: 'stated' },
  flow: { cup: 'ford4', kind: 'ford4', seconds: seconds(timed) },
});
const drops: BucketEvent = {
  kind: 'addition',
  added: { what: 'deflocculant', volume: millilitres(3) },
};

const after = (...events: BucketEvent[]) => {
  const setup: BucketEvent = { kind: 'setup', settings: dippingBucket, volume: millilitres(15_000) };
  const state = foldBucket(
    streamNo(1),
    entriesOf([setup, ...events].map((event, i) => ({ event, minute: 15 * i }))),
  );
  if (!state) throw new Error('no setup');
  return {
    timed: state.deflocculant?.flow?.map((point) => point.seconds),
    next: nextLoosening(state, gravity(1.44), millilitres(15_000)).kind,
  };
};

describe('what is remembered of cup times after deflocculant', () => {
  it('is the first after the dose and the newest', () => {
    expect(after(cup(22), drops, cup(19), cup(19.5), cup(20)).timed).toEqual([22, 19, 20]);
  });

  it('is not a clogged cup’s, so that a dose that helped does not count for nothing', () => {
    // The cup clogged at 72 s. It ran in 18 s then, grew thick again in time, and the second dose helped too.
    const { timed, next } = after(cup(20), drops, cup(72), cup(18), cup(24), drops, cup(20.5));
    expect(timed).toEqual([20, 18, 24, 20.5]);
    expect(next).not.toBe('no-change');
  });

  it('stays a slow cup’s when nothing later was quicker: two doses changed nothing', () => {
    expect(after(cup(20), drops, cup(20), cup(20), drops, cup(20), cup(20.4)).next).toBe('no-change');
  });
});
