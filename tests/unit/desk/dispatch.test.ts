import { describe, expect, it } from 'vitest';
import { asks, isGroup, logs, type Leaf } from '../../../src/contract/contract.ts';
import { openDesk } from '../../../src/desk/dispatch.ts';
import { bucket } from '../../../src/contract/kinds/bucket.ts';
import { commands } from '../../../src/start/registry.ts';
import { streamNo } from '../../../src/studio/ids.ts';
import { handbook } from '../../helpers/handbook.ts';
import { en } from '../../../src/words/en.ts';
import { gullGreyLine, openGlazeRoom, openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';
import { noonPlus } from '../../helpers/store/storeEvents.ts';

const leaves: Leaf[] = commands.flatMap((command) => (isGroup(command) ? command.leaves : [command]));

describe('privacy', () => {
  it('what asks is private, what logs is public, what is refused is private', async () => {
    const room = await openRoomWithGullGrey();
    for (const line of ['/water-or-stir bucket:gg', '/bucket list', '/bucket log bucket:gg', '/help'])
      expect((await room.say(1, line)).private, line).toBe(true);
    for (const line of ['/stirred bucket:gg', '/reading bucket:gg gravity:1.44', '/undo entry:1-2'])
      expect((await room.say(1, line)).private, line).toBe(false);
    for (const line of ['/stirred bucket:nemo', '/bucket add name:x', '/nonsense'])
      expect((await room.say(1, line)).private, line).toBe(true);
  });
});

describe('a bug', () => {
  const which = { bucket: { kind: bucket, needed: true, about: () => 'which' } } as const;
  const breaks = logs({
    name: 'breaks',
    about: () => 'logs, and then breaks',
    who: 'member',
    options: which,
    async run(v, { book, now, member }) {
      const logged = { at: now, loggedAt: now, by: member };
      await book.log(v.bucket.no, { kind: 'stir', seen: [] }, logged);
      throw new Error('a bug');
    },
  });
  const refuses = logs({
    name: 'refuses',
    about: () => 'logs, and then thinks better of it',
    who: 'member',
    options: which,
    async run(v, { book, now, member }) {
      await book.log(v.bucket.no, { kind: 'stir', seen: [] }, { at: now, loggedAt: now, by: member });
      return { kind: 'refusal', title: ['No.'], data: {} };
    },
  });
  const breaksAsking = asks({
    name: 'breaks-asking',
    about: () => 'breaks',
    who: 'member',
    options: {},
    run: () => Promise.reject(new Error('another')),
  });

  it.each(['breaks', 'refuses', 'breaks-asking'])(
    '%s: nothing is half saved, and the next command works',
    async (name) => {
      const room = await openRoomWithGullGrey();
      const bugs: unknown[] = [];
      const desk = openDesk({
        commands: [breaks, refuses, breaksAsking],
        books: room.store.books,
        words: en,
        handbook,
        report: (error) => `id-${bugs.push(error)}`,
      });
      const reply = await desk.dispatch({
        key: 'test:break',
        studio: room.studio,
        member: await room.member('Wren'),
        role: 'member',
        now: noonPlus(1),
        path: [name],
        typed: name === 'breaks-asking' ? {} : { bucket: 'gg' },
      });
      expect(reply.private).toBe(true);
      if (name === 'refuses') expect(reply.kind).toBe('refusal');
      else {
        expect(reply).toMatchObject({ kind: 'error', data: { id: 'id-1' } });
        expect(reply.title.join('')).toContain('id-1');
        expect(bugs).toHaveLength(1);
      }
      const entries = await room.store.books.read(room.studio, (book) =>
        book.entries(streamNo(1), { most: 9 }),
      );
      expect(entries).toHaveLength(1);
      expect((await room.say(2, '/stirred bucket:gg')).data['entry']).toBe('1-2');
    },
  );
});

describe('a name that fits several buckets', () => {
  it('is asked about: each choice is the whole line again, and can be pressed', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(1, '/bucket add name:"Gull White" pail:19l volume:10l');
    const asked = await room.say(2, '/added bucket:gull what:water amount:450ml note:"from the tap: cold"');
    expect(asked).toMatchObject({ kind: 'choice', ok: false, private: true });
    expect(asked.title).toMatch(/which bucket is .gull/i);
    expect(asked.actions.map(({ label }) => label)).toEqual(['1 · Gull Grey', '2 · Gull White']);
    const pressed = await room.say(3, asked.actions[1]?.line ?? '');
    expect(pressed).toMatchObject({ ok: true, data: { entry: '2-2' } });
    const log = await room.say(4, '/bucket log bucket:2');
    expect(log.data['entries']).toMatchObject([{ note: 'from the tap: cold' }, {}]);
  });
});

describe('suggestions', () => {
  const suggest = async (buckets: number, typed: string, role: 'member' | 'keeper', path = ['reading']) => {
    const room = await openGlazeRoom();
    for (let i = 1; i <= buckets; i++)
      await room.keeper(0, `/bucket add name:"Glaze ${i} of many" nick:g${i}`);
    if (buckets === 1) await room.keeper(0, gullGreyLine());
    const member = await room.member('Wren');
    const now = noonPlus(1);
    const request = { key: 'x', studio: room.studio, member, role, now, path, typed: { bucket: typed } };
    return room.desk.suggest(request, 'bucket');
  };

  it('are at most 25, best match first, tolerant of slips', async () => {
    expect(await suggest(40, '', 'member')).toHaveLength(25);
    expect((await suggest(40, 'g33', 'member'))[0]?.value).toBe('33');
    expect((await suggest(1, 'gul gery', 'member'))[0]?.name).toContain('Gull Grey');
  });

  it('of a keeper’s command are for keepers', async () => {
    expect(await suggest(1, 'g', 'member', ['bucket', 'hold'])).toEqual([]);
    expect(await suggest(1, 'g', 'keeper', ['bucket', 'hold'])).not.toEqual([]);
  });
});

describe('every command', () => {
  it('says in a line what it is about, and what each option is', () => {
    for (const leaf of leaves) {
      expect(leaf.about(en).length, leaf.name).toBeGreaterThan(3);
      for (const [name, option] of Object.entries(leaf.options)) {
        expect(option.about(en).length, `${leaf.name} ${name}`).toBeGreaterThan(3);
        expect(option.kind.example, `${leaf.name} ${name}`).not.toBe('');
      }
    }
  });

  it('has a form of at most five of its own options', () => {
    for (const leaf of leaves)
      if (leaf.form) {
        expect(leaf.form.length).toBeLessThanOrEqual(5);
        for (const name of leaf.form) expect(Object.keys(leaf.options)).toContain(name);
        // The form must contain every needed option, or it could not be submitted.
        for (const [name, { needed }] of Object.entries(leaf.options))
          if (needed) expect(leaf.form, leaf.name).toContain(name);
      }
  });

  it('reads its own example, whatever else it refuses', async () => {
    const room = await openRoomWithGullGrey();
    await room.keeper(0, '/bucket add name:Heron');
    await room.keeper(0, '/studio vessel name:"steel cup" tare:85.4g water:100.2g');
    await room.say(0, '/ask question:"recipe for banana bread with walnuts"');
    const member = await room.member('Wren');
    for (const leaf of leaves)
      for (const [name, { kind }] of Object.entries(leaf.options)) {
        const studioOwn = ['coat', 'piece', 'entry', 'member', 'note', 'recipe', 'reminder'].includes(name);
        if (studioOwn) continue;
        const read = await room.store.books.read(room.studio, async (book) =>
          kind.read(kind.example, {
            studio: room.studio,
            member,
            role: 'keeper',
            now: noonPlus(5),
            happenedAt: noonPlus(5),
            words: en,
            handbook,
            book,
            typed: {},
          }),
        );
        expect(read, `${leaf.name} ${name}:${kind.example}`).toMatchObject({ ok: true });
      }
  });
});
