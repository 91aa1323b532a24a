import { describe, expect, it } from 'vitest';
import { openGlazeRoom, openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

describe('a line without a command that tells of an emergency', () => {
  it.each([
    'she cant breathe',
    'fire',
    'FIRE!!!',
    'my friend fainted by the kiln',
    '/help she is not breathing',
    'help she is not breathing',
    '/fire in the kiln room',
    'emergency',
    'sos',
    '911',
    '/911',
    'help me',
    'dip my hand was burned on hot wax',
    'stirred my finger is cut and bleeding',
  ])('is answered as /ask would: %s', async (line) => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(1, line);
    expect(answer).toMatchObject({ ok: true, kind: 'answer', data: { emergency: true } });
    const asked = await room.say(
      2,
      `/ask question:"${line.replace(/^\/?(?:help )?(?=she)/, '').replace('/', '')}"`,
    );
    expect(answer.title).toBe(asked.title);
  });

  it('“help” alone says whom to call first, and then the commands', async () => {
    const room = await openGlazeRoom();
    for (const line of ['help', 'Help!', 'HELP']) {
      const answer = await room.say(1, line);
      expect(answer.data['emergency']).toBe(true);
      expect(answer.title).toMatch(/112|911|999/);
      expect(JSON.stringify(answer.facts)).toMatch(/water-or-stir/);
    }
  });

  it('while /help is the list of commands, and what is none stays none', async () => {
    const room = await openRoomWithGullGrey();
    for (const line of ['/help', '/help reading', '/help about:coat'])
      expect((await room.say(1, line)).data).not.toHaveProperty('emergency');
    for (const line of ['she likes celadon', 'fire to cone 6'])
      expect((await room.say(1, line)).data).not.toHaveProperty('emergency');
    expect((await room.say(1, '/reading bucket:nobody note:"fire"')).data).not.toHaveProperty('emergency');
  });
});
