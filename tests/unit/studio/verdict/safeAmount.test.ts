import { describe, expect, it } from 'vitest';
import { chanceOfPassing, safeAmount } from '../../../../src/studio/verdict/safeAmount.ts';

// 15 l at 1.55, window 1.42 to 1.46: 0.13 to the far edge. Each ml of water uses up 0.42 of gravity·ml there.
const far = 0.13;
const perMl = 0.42;
/** To mid-window: 15 l · 0.11 / 0.44. */
const wanted = 3750;
const volume = (sd: number) => ({ value: 15_000, sd: 15_000 * sd });
const exactly = { value: far, sd: 0 };

describe('the chance of passing the far edge', () => {
  it('with the volume 20 % unsure and gravity known is 17 %', () => {
    // It passes the edge if the pail holds less than 3750 · 0.42 / 0.13 = 12 115 ml: 0.9615 σ low, Φ(−0.9615) = 0.1681.
    expect(chanceOfPassing(volume(0.2), exactly, wanted, perMl)).toBeCloseTo(0.1681, 3);
  });

  it('with the gravity unsure and the volume known is that of the gravity', () => {
    // 3750 · 0.42 / 15 000 = 0.105 is 0.025 short of the edge: 1 σ of 0.025, Φ(−1) = 0.1587.
    expect(chanceOfPassing(volume(0), { value: far, sd: 0.025 }, wanted, perMl)).toBeCloseTo(0.1587, 3);
  });

  it('is 0 or 1 when both are known', () => {
    expect(chanceOfPassing(volume(0), exactly, 4600, perMl)).toBe(0);
    expect(chanceOfPassing(volume(0), exactly, 4700, perMl)).toBe(1);
  });

  it.each([
    [0.05, 0.0003],
    [0.2, 0.0003],
    [0.01, 0.02],
    [0.1, 0.01],
    [0.3, 0.05],
  ])('agrees with a fine sum over both, volume %s unsure, gravity %s', (part, sd) => {
    const fine = 3000;
    let passing = 0;
    let all = 0;
    // Half-steps in both directions, so that no point lies on the line that divides passing from not.
    for (let i = 0; i < fine; i++) {
      const z = -5 + (10 * (i + 0.5)) / fine;
      const held = 15_000 * (1 + part * z);
      const weight = Math.exp(-z * z * 0.5);
      for (let j = 0; j < 300; j++) {
        const y = -5 + (10 * (j + 0.5)) / 300;
        const w = weight * Math.exp(-y * y * 0.5);
        all += w;
        if (held <= 0 || held * (far + sd * y) < wanted * perMl) passing += w;
      }
    }
    expect(chanceOfPassing(volume(part), { value: far, sd }, wanted, perMl)).toBeCloseTo(passing / all, 2);
  });
});

describe('the amount that may go in', () => {
  it('is all that is wanted when that is safe', () => {
    expect(safeAmount(2045, volume(0.05), { value: 0.08, sd: 0.005 }, perMl)).toBe(2045);
  });

  it('is held back to a chance of 5 % when the volume is 20 % unsure', () => {
    // The pail holds less than 15 l · (1 − 1.6449 · 0.2) with a probability of 5 %: that · 0.13 / 0.42.
    expect(safeAmount(wanted, volume(0.2), exactly, perMl) / 3115.6).toBeCloseTo(1, 2);
  });

  it('is zero when the bucket may be past the edge already', () => {
    expect(safeAmount(100, volume(0.05), { value: 0.01, sd: 0.02 }, perMl)).toBe(0);
  });
});
