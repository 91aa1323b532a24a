import { expect, it } from 'vitest';
import { bucketStates } from '../../../../src/studio/bucket/fold/foldBucket.ts';
import { later, minutes, streamNo } from '../../../../src/studio/ids.ts';
import { adviseDose } from '../../../../src/studio/verdict/adviseDose.ts';
import { decide } from '../../../../src/studio/verdict/decide.ts';
import { glazeRoomLife } from '../../../helpers/glazeRoomLife.ts';

it('is the dose of the verdict whenever that asks for one, even after a reading that belief takes for a slip', () => {
  const life = glazeRoomLife(4);
  for (let visit = 0; visit < 60; visit++) {
    life.wait(0.05 + 1.5 * life.uniform() ** 2);
    life.stir();
    life.look('wren');
    if (life.uniform() < 0.6) life.weigh('weight', true);
  }
  let doses = 0;
  for (const state of bucketStates(streamNo(1), life.entries())) {
    const now = later(state.foldedTo, minutes(1));
    const { step, amounts } = decide(state, { now, role: 'keeper' });
    if (step !== 'flocculate') continue;
    doses++;
    const { advice } = adviseDose(state, now);
    expect(advice).toMatchObject({ now: true, next: { dose: amounts.doseMl ?? amounts.doseMlPerLitre } });
  }
  expect(doses).toBeGreaterThan(0);
});
