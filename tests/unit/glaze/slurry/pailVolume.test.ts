import { describe, expect, it } from 'vitest';
import { rimGapFor, pailVolume } from '../../../../src/glaze/slurry/pailVolume.ts';
import { millilitres, millimetres } from '../../../../src/glaze/units.ts';
import { must } from '../../../helpers/glaze/must.ts';

const pail = (bottom: number, top: number, height: number) => ({
  bottomDiameter: millimetres(bottom),
  topDiameter: millimetres(top),
  height: millimetres(height),
});

describe('the volume of glaze in a pail', () => {
  it('of straight walls is a cylinder’s', () => {
    // π/4 · 200² · 250 mm³ by hand
    const volume = must(pailVolume({ ...pail(200, 200, 300), gap: millimetres(50) }));
    expect(volume).toBeCloseTo(7853.982, 3);
  });

  it('that tapers to a point-like end comes to a third of the cylinder and its neighbours', () => {
    // frustum 100 → 300 over 300 mm: π·300/12·(100² + 100·300 + 300²) mm³ = 10 210.176 ml by hand
    expect(must(pailVolume({ ...pail(100, 300, 300), gap: millimetres(0) }))).toBeCloseTo(10210.176, 3);
  });

  it('is nothing when the gap is the whole height, and refused when it is more', () => {
    expect(must(pailVolume({ ...pail(250, 280, 350), gap: millimetres(350) }))).toBe(0);
    expect(pailVolume({ ...pail(250, 280, 350), gap: millimetres(351) })).toEqual({
      ok: false,
      outOfRange: { quantity: 'gap from the rim', value: 351, low: 0, high: 350 },
    });
  });

  it('that does not fit is refused with what the pail holds', () => {
    const full = must(pailVolume({ ...pail(250, 280, 350), gap: millimetres(0) }));
    const refusal = rimGapFor({ ...pail(250, 280, 350), volume: millilitres(25_000) });
    expect(refusal).toEqual({
      ok: false,
      outOfRange: { quantity: 'volume', value: 25_000, low: 0, high: full },
    });
  });
});
