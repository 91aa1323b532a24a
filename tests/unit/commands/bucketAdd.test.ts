import { expect, it } from 'vitest';
import { gullGreyLine, openGlazeRoom } from '../../helpers/room/glazeRoom.ts';

it('a bucket set up without its window says that this comes first, and offers it', async () => {
  const room = await openGlazeRoom();
  const bare = await room.keeper(0, '/bucket add name:"Tide Green" pail:20l volume:15l');
  expect(bare.dont.join(' ')).toContain('the gravity that it should have');
  expect(bare.actions).toContainEqual(
    expect.objectContaining({ label: 'Set its window', line: '/bucket change bucket:1' }),
  );
  const whole = await room.keeper(1, gullGreyLine());
  expect(whole.actions.map(({ label }) => label)).not.toContain('Set its window');
});
