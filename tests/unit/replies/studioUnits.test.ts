import { expect, it } from 'vitest';
import { openGlazeRoom } from '../../helpers/room/glazeRoom.ts';

// By hand: 5 US gallons are 18.93 l, 21 °C are 69.8 °F, and from 1.5 to 1.45 takes 1 × 0.05 ÷ 0.45 of a gallon, which is 0.44 qt.
it('answers and refuses in the studio’s own units', async () => {
  const room = await openGlazeRoom();
  await room.keeper(0, '/studio set units:us');
  const tooMuch = await room.keeper(1, '/bucket add name:"Gull Grey" nick:gg pail:5gal volume:6gal');
  expect(tooMuch.title).toMatch(/6 gal does not fit a pail of 5 gal/);
  await room.keeper(2, '/bucket add name:"Gull Grey" nick:gg pail:5gal volume:4gal gravity:1.42-1.46');
  const poured = await room.keeper(3, '/added bucket:gg what:water amount:9gal');
  expect(poured.title).toMatch(/more than the pail holds \(5 gal\)/);
  const drying = await room.keeper(4, '/studio drying temperature:21C humidity:55');
  expect(drying.facts.map(({ text }) => text).join()).toMatch(/70 °F, 55 % humidity/);
  const asked = await room.say(5, '/ask question:"how much water to get from 1.50 to 1.45"');
  expect(asked.title).toMatch(/Water to add: .* (?:cups|qt) for every gallon/);
});
