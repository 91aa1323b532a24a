import { describe, expect, it } from 'vitest';
import { gullGreyLine, openGlazeRoom, openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

describe('what an answer says at once, so that nobody asks back', () => {
  it('no finger for a bucket marked for gloves, before “Log it?”, and nothing else that was said is lost', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, gullGreyLine({ cautions: 'gloves' }));
    const { kind, title, actions } = await room.say(1, 'gull grey looks thin 1.45 stirred');
    expect(kind).toBe('refusal');
    expect(title).toMatch(/marked for gloves.*Nothing was saved/);
    expect(actions.map(({ line }) => line).join()).toMatch(
      /^\/reading bucket:1 gravity:1\.45 stirred:yes when:/,
    );
  });

  it('why seconds that were timed do not tell how it flows: none are set', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, '/bucket add name:"Gull Grey" nick:gg pail:19l volume:15l gravity:1.42-1.46');
    const { title } = await room.say(1, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes');
    expect(title).toMatch(/Now look at how it flows: no window of seconds is set yet/);
  });

  it('that something went in, and nobody knows how much, where a cup is asked for', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes');
    const { data, reasons } = await room.say(2, '/added bucket:gg what:water');
    expect(data['verdict']).toMatchObject({ step: 'measure' });
    expect(reasons.join(' ')).toMatch(/Something went in or came out since the last reading/);
  });

  it('on its card how long it may rest, where a keeper set that', async () => {
    const room = await openRoomWithGullGrey();
    const { facts } = await room.say(1, '/bucket show bucket:gg');
    expect(facts).toContainEqual({ label: 'May rest', text: '4 h after a stir, as a keeper set' });
  });

  it('one moment, not a span, for a change that two readings in one minute show', async () => {
    const room = await openRoomWithGullGrey();
    for (const gravity of ['1.44', '1.37', '1.37'])
      await room.say(1, `/reading bucket:gg gravity:${gravity} within:0.01 seconds:14 stirred:yes`);
    const { facts } = await room.say(1, '/water-or-stir bucket:gg');
    const { reasons } = await room.keeper(2, '/bucket log bucket:gg');
    expect(JSON.stringify([facts, reasons])).not.toMatch(/between .*12:01.* and .*12:01/);
  });
});
