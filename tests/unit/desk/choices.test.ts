import { expect, it } from 'vitest';
import { leafAt } from '../../../src/contract/parseLine.ts';
import { commands } from '../../../src/start/registry.ts';
import { openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

const choices = (path: string[], option: string) => {
  const control = leafAt(commands, path)?.options[option]?.kind.control;
  return typeof control === 'object' ? control.pick : [];
};

it.each([
  [['added'], 'what', 'draw-off', 'clear water, drawn off'],
  [['added'], 'what', 'taken', 'glaze, taken out'],
  [['reading'], 'scale', 'baume-144', '°Baumé, older (144.3)'],
  [['coat', 'on'], 'kind', 'hot-wax', 'melted wax'],
  [['batch', 'correct'], 'by', 'blend', 'another bucket in'],
])('%s %s: %s is shown as %s', (path, option, value, label) => {
  expect(choices(path, option)).toContainEqual({ name: label, value });
});

it('what is shown may be typed too', async () => {
  const room = await openRoomWithGullGrey();
  const answer = await room.say(1, '/added bucket:gg what:"Clear water, drawn off" amount:1l');
  expect(answer.logged?.text).toBe('drew off 1 l of clear water');
});
