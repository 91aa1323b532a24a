import { describe, expect, it } from 'vitest';
import { celsius, gravity, seconds } from '../../../../src/glaze/units.ts';
import type { BucketEvent } from '../../../../src/studio/bucket/bucketEvent.ts';
import { foldBucket } from '../../../../src/studio/bucket/fold/foldBucket.ts';
import { later, minutes, streamNo } from '../../../../src/studio/ids.ts';
import { perhapsOf } from '../../../../src/studio/measure/whichBucket.ts';
import { entriesOf } from '../../../helpers/bucketArbitraries.ts';
import { dippingBucket } from '../../../helpers/glazeRoomLife.ts';

type Reading = Extract<BucketEvent, { kind: 'reading' }>;

const readingOf = (value: number, time: number): Reading => ({
  kind: 'reading',
  gravity: { value: gravity(value), u95: 0.01, by: 'stated' },
  flow: { cup: 'ford4', kind: 'ford4', seconds: seconds(time) },
  stirred: true,
  seen: [],
});

/** A bucket of this gravity that ran so many seconds, in mid-window, at room temperature. */
const timedAt = (no: number, value: number, time: number) => {
  const efflux = { low: seconds(time - 1), high: seconds(time + 1) };
  const settings = {
    ...dippingBucket,
    cup: 'ford4',
    efflux,
    gravity: { low: gravity(value - 0.02), high: gravity(value + 0.02) },
  };
  const entries = entriesOf([
    { event: { kind: 'setup', settings }, minute: 0 },
    { event: readingOf(value, time), minute: 1 },
    { event: readingOf(value, time), minute: 3 },
    { event: readingOf(value, time), minute: 5 },
  ]);
  const state = foldBucket(streamNo(no), entries);
  if (!state) throw new Error('no bucket');
  return state;
};

describe('a reading that is odd for its bucket and fits another', () => {
  const before = timedAt(1, 1.44, 14);
  const other = timedAt(2, 1.455, 18.4);
  const at = later(before.foldedTo, minutes(10));
  // Water is half as thick again at 5 °C, 1.52 mm²/s to 1.00 (IAPWS 2008), and two thirds of that show: 14 s become 18.4 s.
  const slow = readingOf(1.455, 18.4);

  it('is perhaps of the other, in a warm room', () => {
    expect(perhapsOf(slow, { before, others: [other], at })?.no).toBe(2);
  });

  it('is of its own bucket, when the glaze is so cold that it runs as slowly', () => {
    expect(perhapsOf({ ...slow, temperature: celsius(5) }, { before, others: [other], at })).toBeUndefined();
  });
});
