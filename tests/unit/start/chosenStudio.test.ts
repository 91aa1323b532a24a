import { expect, it } from 'vitest';
import { UsageProblem } from '../../../src/start/exitCodeOf.ts';
import { studioAmong } from '../../../src/start/chosenStudio.ts';
import { studioId } from '../../../src/studio/ids.ts';

const [north, south] = [studioId('north'), studioId('south')];
const namesakes = [
  { id: north, name: 'Wrackline' },
  { id: south, name: 'Wrackline' },
];

it('takes no studio by a name that two of them have', () => {
  expect(() => studioAmong(namesakes, 'Wrackline')).toThrow(UsageProblem);
  expect(studioAmong(namesakes, 'south')).toBe(south);
});

it('prefers a studio’s id to another’s name', () => {
  expect(studioAmong([{ id: north, name: 'south' }, ...namesakes.slice(1)], 'south')).toBe(south);
});
