import { expect, it } from 'vitest';
import { readLevel } from '../../../src/parse/readLevel.ts';

it.each([
  ['two thirds', { by: 'part', part: 2 / 3 }],
  ['about half full', { by: 'part', part: 1 / 2 }],
  ['60 %', { by: 'part', part: 0.6 }],
  ['12 l', { by: 'volume', volume: 12_000 }],
  ['7 cm down', { by: 'gap', gap: 70 }],
])('%s', (typed, value) => {
  expect(readLevel(typed, 'metric')).toEqual({ ok: true, value });
});

it.each(['constructor', 'constructor half', 'two', '0/0'])('%s is no level', (typed) => {
  expect(readLevel(typed, 'metric').ok).toBe(false);
});
