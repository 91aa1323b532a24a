import { expect, it } from 'vitest';
import { stokesVelocity } from '../../../../src/glaze/slurry/settling.ts';
import { density, micrometres, millipascalSeconds } from '../../../../src/glaze/units.ts';

const quartz = (diameter: number) =>
  stokesVelocity({
    diameter: micrometres(diameter),
    grain: density(2650),
    liquid: density(1000),
    viscosity: millipascalSeconds(1),
  });

it('a grain of sand falls too fast for Stokes’ law and is refused by its Reynolds number', () => {
  // by hand: v = 9.80665·(10⁻⁴)²·1650/0.018 = 8.9894 mm/s, Re = 8.9894e-3·10⁻⁴·1000/0.001 = 0.89894
  const refusal = quartz(100);
  expect(refusal.ok).toBe(false);
  if (!refusal.ok) {
    expect(refusal.outOfRange.quantity).toBe('Reynolds number');
    expect(refusal.outOfRange.value).toBeCloseTo(0.89894, 4);
  }
});

it('the largest grain of quartz that Stokes’ law describes is 69 µm', () => {
  // Re goes as d³: 100·∛(0.3/0.89894) = 69.36 µm
  expect(quartz(69.3).ok).toBe(true);
  expect(quartz(69.4).ok).toBe(false);
});
