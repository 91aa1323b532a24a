import { describe, expect, it } from 'vitest';
import { celsius, gravity, millilitres, seconds } from '../../../../src/glaze/units.ts';
import type { BucketEvent } from '../../../../src/studio/bucket/bucketEvent.ts';
import { foldBucket } from '../../../../src/studio/bucket/fold/foldBucket.ts';
import { proposeWindow, ranAt20 } from '../../../../src/studio/firing/proposeWindow.ts';
import { streamNo } from '../../../../src/studio/ids.ts';
import { entriesOf } from '../../../helpers/bucketArbitraries.ts';
import { dippingBucket } from '../../../helpers/glazeRoomLife.ts';

const { efflux: _, ...noSeconds } = dippingBucket;

const timed = (degrees: number) => {
  const reading: BucketEvent = {
    kind: 'reading',
    stirred: true,
    seen: [],
    gravity: { value: gravity(1.44), u95: 0.01, by: 'weight' },
    flow: { cup: 'ford4', kind: 'ford4', seconds: seconds(19) },
    temperature: celsius(degrees),
  };
  const state = foldBucket(
    streamNo(1),
    entriesOf([
      { event: { kind: 'setup', settings: noSeconds, volume: millilitres(15_000) }, minute: 0 },
      { event: reading, minute: 5 },
    ]),
  );
  if (!state) throw new Error('no setup');
  return state;
};

describe('a window proposed where a bucket has none', () => {
  // Water runs 1.3063 mm²/s at 10 °C and 1.0034 at 20 °C (IAPWS SR6-08). Of its logarithm 0.65 shows in a cup, as set down
  // in warmth.ts: e^(0.65·ln(1.3063/1.0034)) = 1.1871, and 19 s/1.1871 = 16.0 s.
  it('is for 20 °C, as later seconds are held against it: cold glaze runs slower', () => {
    const cold = timed(10);
    expect(ranAt20(cold)?.seconds).toBeCloseTo(16.006, 2);
    // 16.006 s ± 15 %, to whole seconds.
    expect(proposeWindow(cold, [])).toMatchObject({ efflux: { low: 14, high: 18 } });
  });

  it('is around the seconds as they were where it was 20 °C', () => {
    // 19 s ± 15 %, to whole seconds.
    expect(proposeWindow(timed(20), [])).toMatchObject({ efflux: { low: 16, high: 22 } });
  });
});
