import { expect, it } from 'vitest';
import { lineCommands } from '../../../src/notebook/lineCommands.ts';
import type { Meaning } from '../../../src/notebook/meanings.ts';

const commands = (line: Partial<Record<Meaning, string>>) => {
  const found = lineCommands(new Map(Object.entries(line)) as ReadonlyMap<Meaning, string>);
  return Array.isArray(found)
    ? found.map(({ path, typed }) =>
        `${path.join(' ')} ${Object.entries(typed)
          .map(([name, value]) => `${name}:${value}`)
          .join(' ')}`.trim(),
      )
    : found;
};

it('a line with everything was measured first, then added to, then sieved', () => {
  expect(
    commands({ gravity: '1.44', water: '200 ml', dry: '50 g', mesh: '80', seconds: '14', stirred: 'x' }),
  ).toEqual([
    'reading gravity:1.44 seconds:14 stirred:yes',
    'added what:water amount:200 ml',
    'added what:dry amount:50 g',
    'sieved mesh:80',
  ]);
});

it('a stir with minutes came before what was measured of it', () => {
  expect(commands({ gravity: '1.44', minutes: '3' })).toEqual(['stirred minutes:3', 'reading gravity:1.44']);
});

it('a stir alone is a stir; one that was not done is nothing', () => {
  expect(commands({ stirred: 'ja' })).toEqual(['stirred']);
  expect(commands({ stirred: 'nein', sieved: 'no' })).toEqual([]);
  expect(commands({ stirred: 'no', minutes: '3' })).toEqual([]);
  expect(commands({ stirred: 'perhaps' })).toEqual({ kind: 'yes-or-no', typed: 'perhaps' });
});

it('a note stands with what went in, since it may name a hazard; else with the first, else alone', () => {
  expect(commands({ gravity: '1.44', what: 'other', note: 'frit' })).toEqual([
    'reading gravity:1.44',
    'added what:other note:frit',
  ]);
  expect(commands({ gravity: '1.44', sieved: '1', note: 'lumpy' })).toEqual([
    'reading gravity:1.44 note:lumpy',
    'sieved',
  ]);
  expect(commands({ note: 'smells' })).toEqual(['reading note:smells']);
});

it('an amount of nothing is handed on, to be refused', () => {
  expect(commands({ amount: '200 ml' })).toEqual(['added amount:200 ml']);
});
