import { expect, it } from 'vitest';
import { tileGroups } from '../../../../src/glaze/body/absorption.ts';

// ISO 13006: dry-pressed groups up to 0.5, 3, 6 and 10 %, and above; 20 % is where wall tiles end in practice
it('tile groups follow on from each other at the standard’s absorptions', () => {
  expect(tileGroups.map(({ upTo }) => upTo)).toEqual([0.005, 0.03, 0.06, 0.1, 0.2]);
  expect(tileGroups.map(({ over }) => over)).toEqual([0, 0.005, 0.03, 0.06, 0.1]);
});
