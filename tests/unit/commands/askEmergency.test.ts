import { describe, expect, it } from 'vitest';
import { openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

const ask = (room: GlazeRoom, question: string, bucket?: string) =>
  room.request(30, { path: ['ask'], typed: { question, ...(bucket !== undefined && { bucket }) } });
const ids = (answer: { data: Record<string, unknown> }) =>
  (answer.data['answers'] as { id: string }[]).map(({ id }) => id);
const allOf = ({ title, facts, dont, reasons }: Awaited<ReturnType<typeof ask>>) =>
  JSON.stringify([title, facts, dont, reasons]);

describe('an emergency put to /ask', () => {
  it.each([
    ['My chest is tight after mixing glaze', /^Get out into fresh air/],
    ['kiln alarm beeping', /^Everyone out/],
    ['someone got electrocuted', /^Don't touch .* switch the power off/],
    ['FIRE: what do we do', /^Everyone out/],
    ['i smell gas', /^Everyone out: touch no switch/],
    ['glaze in my eye', /^Rinse the eye .* at least 15 minutes, .* lenses out/],
    ['my kid swalowed glaze', /^Rinse the mouth, make nobody vomit, and call your poison line/],
    ['burnt my hand on the kiln', /^Cool the burn .* 20 minutes/],
    ['my finger wont stop bleeding', /^Press hard/],
    ['he fainted', /^Call 112, 911, 999 or your own emergency number now/],
  ])('is answered by what to do now: %s', async (question, now) => {
    const room = await openRoomWithGullGrey();
    const answer = await ask(room, question);
    expect(answer).toMatchObject({ kind: 'answer', private: true, data: { emergency: true } });
    expect(answer.title).toMatch(now);
    expect(answer.cautions[0]).toMatch(/not medical advice/);
    expect(answer.reasons.join(' ')).toMatch(/Basis: /);
  });

  it('is never answered by a bucket’s state, named or given, ready, held or unknown', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 within:0.01 seconds:14 stirred:yes');
    await room.keeper(2, '/bucket add name:"Sandbar"');
    await room.keeper(3, '/bucket hold bucket:sandbar why:"a brush fell in"');
    for (const [question, bucket] of [
      ['i got gull grey in my eye', undefined],
      ['water or stir gull grey, also my eye is burning', undefined],
      ['my chest is tight', 'gg'],
      ['someone got electrocuted', 'sandbar'],
      ['i drank sandbar', undefined],
      ['kiln alarm beeping', 'no such bucket'],
      ['kiln alarm beeping', 'gull grey 230g'],
    ] as const) {
      const answer = await ask(room, question, bucket);
      expect([question, answer.kind, answer.data['emergency']]).toEqual([question, 'answer', true]);
      expect(Object.keys(answer.data).toSorted()).toEqual(['answers', 'emergency']);
      expect(allOf(answer)).not.toMatch(/ravity|window|stirred|on hold|Use it/);
    }
    // What is in it, whoever answers the poison line will ask.
    const { actions } = await ask(room, 'i swallowed some gull grey');
    expect(actions.map(({ line }) => line)).toEqual(['/bucket show bucket:1']);
    expect(room.bugs).toEqual([]);
  });

  it('comes before a coat, a studio’s own note and a story that is too long', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/coat on kind:wax pieces:"3 bowls"');
    await room.keeper(
      2,
      '/note add title:"Eye bath" text:"The eye bath hangs left of the sink." words:"eye, eyes"',
    );
    expect((await ask(room, 'the wax is on fire')).title).toMatch(/^Everyone out/);
    const answer = await ask(room, 'there is glaze in my eye');
    expect(answer.title).toMatch(/^Rinse the eye/);
    expect(answer.facts[0]).toEqual({ label: 'Eye bath', text: 'The eye bath hangs left of the sink.' });
    const story = `help i cant breathe ${'and then we mixed the new batch '.repeat(40)}`;
    expect((await ask(room, story)).title).toMatch(/^Get out into fresh air/);
  });

  it('says it at the terminal and from a typed line too, however it is typed', async () => {
    const room = await openRoomWithGullGrey();
    for (const line of [
      '/ask question:FIRE in the kiln room',
      '/ask question:"help: someone fainted" bucket:gg',
      '/ask question:my eye: it burns',
    ])
      expect([line, (await room.say(5, line)).data['emergency']]).toEqual([line, true]);
  });

  it('is one only then: other answers say nothing of it', async () => {
    const room = await openRoomWithGullGrey();
    for (const question of [
      'fire to cone 6',
      'is it bad to breathe dust in general?',
      'burn out wax',
      'gull grey?',
      'what happens if you swallow glaze',
    ])
      expect([question, 'emergency' in (await ask(room, question)).data]).toEqual([question, false]);
    expect(ids(await ask(room, 'is it bad to breathe dust in general?'))[0]).toBe('dust');
    expect(ids(await ask(room, 'what happens if you swallow glaze'))[0]).toBe('swallowed');
  });
});

describe('a question that is not about how a bucket stands', () => {
  it('is answered without its state, and with what it is marked for', async () => {
    const room = await openRoomWithGullGrey(['cautions', 'caustic']);
    await room.say(1, '/reading bucket:gg gravity:1.50 within:0.01 seconds:40 stirred:yes');
    for (const [question, bucket] of [
      ['is this glaze food safe', 'gg'],
      ['is gull grey food safe', undefined],
      ['can kids use gull grey', undefined],
    ] as const) {
      const answer = await ask(room, question, bucket);
      expect(allOf(answer)).not.toMatch(/ravity|flocculated|last stir/);
      expect(answer.data['verdict']).toBeUndefined();
      expect(answer.cautions.join(' ')).toMatch(/Caustic: gloves and eye protection/);
    }
    expect(allOf(await ask(room, 'who won the football', 'gg'))).not.toMatch(/ravity|last stir/);
  });
});
