import { describe, expect, it } from 'vitest';
import {
  gullGreyLine,
  openGlazeRoom,
  openRoomWithGullGrey,
  type GlazeRoom,
} from '../../helpers/room/glazeRoom.ts';

const day = 24 * 60;

interface Item {
  kind: string;
  bucket?: number;
}
const items = (answer: { data: Record<string, unknown> }) => answer.data['items'] as Item[];
const inShort = (answer: { data: Record<string, unknown> }) =>
  items(answer).map(({ kind, bucket }) => (bucket === undefined ? kind : `${kind} ${bucket}`));

const bucket = (room: GlazeRoom, name: string, nick: string) => room.keeper(0, gullGreyLine({ name, nick }));
const read = (room: GlazeRoom, minutes: number, of: string, gravity: number, more = 'seconds:14') =>
  room.say(minutes, `/reading bucket:${of} gravity:${gravity} within:0.01 ${more} stirred:yes`);

/** Bucket 1 too thick, 2 held, 3 lumpy, 4 fit, 5 never measured, 6 held for a hazard. */
const sixBuckets = async () => {
  const room = await openGlazeRoom();
  for (const [name, nick] of [
    ['Gull Grey', 'gg'],
    ['Kelp Rope', 'kr'],
    ['Sandbar', 'sb'],
    ['Fog Bell', 'fb'],
    ['Dory Blue', 'db'],
    ['Bog Iron', 'bi'],
  ] as const)
    await bucket(room, name, nick);
  await read(room, 10, 'gg', 1.52, 'seconds:20');
  await room.keeper(10, '/bucket hold bucket:kr why:"tested badly"');
  await read(room, 10, 'sb', 1.44, 'seconds:14 seen:lumps');
  await read(room, 10, 'fb', 1.44);
  await room.keeper(11, '/bucket hold bucket:bi why:"lead in it" cause:hazard');
  return room;
};

describe('the keeper’s round', () => {
  it('is in the order of need, then of the buckets; what can harm is first', async () => {
    const room = await sixBuckets();
    const round = await room.keeper(12, '/round');
    expect(inShort(round)).toEqual(['hold 6', 'hold 2', 'step 1', 'sieve 3', 'reading 5']);
    expect(round.title).toMatch(/^5 things to do\. First: Bog Iron\.$/);
    expect(round.private).toBe(true);
  });

  it('has a press for each row that one can do, and none that releases a hazard', async () => {
    const room = await sixBuckets();
    const { actions } = await room.keeper(12, '/round');
    const lines = actions.map(({ line }) => line.replace(/ after:\d+/, ''));
    expect(lines).toEqual([
      '/bucket log',
      '/bucket release bucket:2',
      expect.stringMatching(/^\/added bucket:1 what:water amount:\d+ml$/),
      '/sieved bucket:3',
      '/reading bucket:5',
    ]);
    const sieved = await room.keeper(13, actions.find(({ line }) => line.startsWith('/sieved'))?.line ?? '');
    expect(sieved.kind).toBe('answer');
    expect(inShort(await room.keeper(14, '/round'))).not.toContain('sieve 3');
  });

  it('names a rested bucket only for what comes after the stir', async () => {
    const room = await sixBuckets();
    // Six hours later every bucket has rested longer than the four that it may.
    const round = await room.keeper(6 * 60, '/round');
    expect(inShort(round)).toContain('reading 1');
    expect(inShort(round)).not.toContain('reading 4');
    const text = round.facts.find(({ label }) => label === '1 · Gull Grey')?.text;
    expect(text).toMatch(/^Stir it to the bottom, then weigh a cup of it/);
    expect(round.actions.map(({ line }) => line)).toContain('/reading bucket:1');
  });

  it('has a cake scraped up before a second cup, and a rested bucket stirred before it', async () => {
    const room = await openRoomWithGullGrey();
    await read(room, 0, 'gg', 1.44);
    await read(room, 2 * day, 'gg', 1.4);
    const rested = await room.keeper(2 * day + 6 * 60, '/round');
    expect(inShort(rested)).toEqual(['second-cup 1']);
    expect(rested.facts[0]?.text).toMatch(/Stir it to the bottom, then weigh a second cup/);
    await room.say(2 * day + 6 * 60, '/stirred bucket:gg seen:cake');
    const caked = await room.keeper(2 * day + 6 * 60 + 1, '/round');
    expect(inShort(caked)).toEqual(['step 1']);
    expect(caked.facts[0]?.text).toMatch(/^Scrape up the bottom/);
  });

  it('tells what nobody logged for a week, by nobody’s name, with what to log', async () => {
    const room = await openRoomWithGullGrey();
    await read(room, 0, 'gg', 1.44);
    await read(room, 2 * day, 'gg', 1.4);
    expect(inShort(await room.keeper(2 * day + 1, '/round'))).toEqual(['second-cup 1']);
    await read(room, 2 * day + 3, 'gg', 1.4);
    const round = await room.keeper(2 * day + 4, '/round');
    expect(inShort(round)[0]).toBe('unlogged 1');
    // 15 l at 1.44 hold 6.6 kg of water and powder of 2.6 to 1; by mass balance about 1.5 l bring them to 1.40.
    expect(round.facts[0]?.text).toMatch(
      /^About 1\.\d.* l of water went in between .*, and nobody wrote it down\.$/,
    );
    expect(JSON.stringify(round)).not.toContain('Wren');
    expect(round.actions.map(({ line }) => line)[1]).toMatch(/^\/added bucket:1 what:water amount:/);
    expect(inShort(await room.keeper(10 * day, '/round'))).not.toContain('unlogged 1');
  });

  it('asks of dry coats and late pieces of others after a day, and of its own at once', async () => {
    const room = await openRoomWithGullGrey();
    await read(room, 0, 'gg', 1.44);
    await room.say(0, '/coat on kind:tape pieces:"2 jugs"');
    await room.say(0, '/prep piece:"tall jug" bucket:gg');
    await room.keeper(0, '/coat on kind:tape pieces:"3 bowls"');
    expect(inShort(await room.keeper(1, '/round'))).toEqual(['coat']);
    const next = await room.keeper(day + 60, '/round');
    expect(inShort(next).filter((item) => item !== 'reading 1')).toEqual(['coat', 'coat', 'piece']);
    expect(next.facts.find(({ label }) => label !== '1 · Gull Grey')?.label).toBe('2 jugs · Wren');
    expect(next.actions.map(({ line }) => line)).toContain('/coat off coat:c-1 how:peeled');
  });

  it('says so when nothing waits', async () => {
    const room = await openRoomWithGullGrey();
    await read(room, 0, 'gg', 1.44);
    expect((await room.keeper(1, '/round')).title).toMatch(/^Nothing is left to do/);
  });

  it('goes on from any of its rows', async () => {
    const room = await sixBuckets();
    const on = await room.keeper(12, '/round from:sieve-3');
    expect(inShort(on)).toEqual(['sieve 3', 'reading 5']);
  });
});

describe('a member’s round', () => {
  it('is their own coats and pieces, dry or not, and nobody else’s', async () => {
    const room = await sixBuckets();
    await room.say(12, '/coat on kind:wax pieces:"3 bowls"');
    await room.say(12, '/coat on kind:wax pieces:vase', 'Mara');
    await room.say(12, '/prep piece:"tall jug" bucket:fb');
    const round = await room.say(13, '/round');
    expect(inShort(round)).toEqual(['coat', 'piece']);
    expect(round.title).toBe('2 things wait for you.');
    expect(JSON.stringify(round)).not.toContain('vase');
    expect((await room.say(13, '/round', 'Nobody else')).title).toBe('Nothing waits for you.');
  });
});

describe('a question that nobody could answer', () => {
  const question = 'recipe for banana bread with walnuts';
  const ask = (room: GlazeRoom, minutes: number, as = 'Wren') =>
    room.say(minutes, `/ask question:"${question}"`, as);

  it('is on the keeper’s round, without a name, and counted when it is asked again', async () => {
    const room = await openGlazeRoom();
    await ask(room, 1);
    await ask(room, 2, 'Mara');
    const { facts } = await room.keeper(3, '/round');
    expect(facts).toEqual([
      { label: 'Asked, not answered', text: expect.stringMatching(/^“recipe for banana .*” 2 times, last/) },
    ]);
    expect(JSON.stringify(await room.keeper(3, '/note questions'))).not.toMatch(/Wren|Mara/);
    expect((await room.say(3, '/round')).facts).toEqual([]);
  });

  it('has a name once whoever asked agrees, and is not counted twice for it', async () => {
    const room = await openGlazeRoom();
    const { actions } = await ask(room, 1);
    await room.say(2, actions.find(({ line }) => line.startsWith('/note wanted'))?.line ?? '');
    const [row] = (await room.keeper(3, '/round')).facts;
    expect(row?.text).toMatch(/”.*, by Wren$/);
    expect(row?.text).not.toContain('times');
  });

  it('leaves the round when a note answers it, when a keeper takes it off, and after sixty days', async () => {
    const room = await openGlazeRoom();
    await ask(room, 1);
    const round = await room.keeper(2, '/round');
    const write = round.actions.find(({ line }) => line.startsWith('/note add'))?.line ?? '';
    await room.keeper(3, `${write} text:"No food in the glaze room."`);
    expect((await room.keeper(4, '/round')).facts).toEqual([]);
    await room.keeper(5, '/note remove note:1');
    expect((await room.keeper(6, '/round')).facts).toHaveLength(1);
    expect((await room.keeper(61 * day, '/round')).facts).toEqual([]);
    await room.keeper(7, '/note answered question:q-1');
    expect((await room.keeper(8, '/round')).facts).toEqual([]);
    expect((await room.keeper(9, '/note answered question:q-1')).kind).toBe('refusal');
  });

  it('is not kept of an emergency, of a line that is no command, or of nothing', async () => {
    const room = await openGlazeRoom();
    await room.say(1, '/ask question:"bleach and vinegar fumes, i cough"');
    await room.say(1, 'good evening everybody');
    await room.say(1, '/ask question:"?!"');
    expect((await room.keeper(2, '/note questions')).facts).toEqual([]);
  });

  it('of whoever is forgotten is forgotten, and so is one that names them', async () => {
    const room = await openGlazeRoom();
    await room.say(0, '/studio keeper member:Tove', 'Tove');
    const { actions } = await ask(room, 1, 'Quillfeather');
    await room.say(
      2,
      actions.find(({ line }) => line.startsWith('/note wanted'))?.line ?? '',
      'Quillfeather',
    );
    await room.say(2, '/ask question:"has quillfeather any banana bread"');
    await room.say(2, '/ask question:"any walnut bread at all"');
    await room.say(3, '/forget-me sure:yes', 'Quillfeather');
    await room.store.erased();
    const left = (await room.keeper(4, '/note questions')).data['questions'] as { text: string }[];
    expect(left.map(({ text }) => text)).toEqual(['any walnut bread at all']);
  });

  it('is not kept when the program only looks for an emergency', async () => {
    const room = await openGlazeRoom();
    const looked = await room.request(1, { path: ['ask'], typed: { question }, probe: true });
    expect(looked.title).toBe('No note on that. Ask a keeper.');
    expect((await room.keeper(2, '/note questions')).facts).toEqual([]);
  });
});

describe('the log of all buckets', () => {
  it('is the last logged first, and goes on where it stopped, with nothing twice and nothing missing', async () => {
    const room = await sixBuckets();
    const whole = await room.keeper(20, '/bucket log most:100');
    const all = (whole.data['entries'] as { entry: string }[]).map(({ entry }) => entry);
    expect(all).toHaveLength(11);
    expect(all[0]).toBe('6-2');
    const seen: string[] = [];
    let line: string | undefined = '/bucket log most:3';
    while (line !== undefined) {
      const page = await room.keeper(20, line);
      seen.push(...(page.data['entries'] as { entry: string }[]).map(({ entry }) => entry));
      line = page.actions.find(({ label }) => label === 'Older')?.line;
    }
    expect(seen).toEqual(all);
  });
});
