import { writeFileSync } from 'node:fs';
import { PassThrough } from 'node:stream';
import { sql } from 'kysely';
import { describe, expect, it } from 'vitest';
import type { Reply } from '../../src/contract/contract.ts';
import { openDesk } from '../../src/desk/dispatch.ts';
import { commands } from '../../src/start/registry.ts';
import { migrations } from '../../src/store/migrations/migrations.ts';
import { asStoreProblem } from '../../src/store/engine/storeProblem.ts';
import { instant } from '../../src/studio/ids.ts';
import { chat } from '../../src/terminal/chat.ts';
import { jsonLine, replyJson, replyLines } from '../../src/terminal/plainReply.ts';
import { en } from '../../src/words/en.ts';
import { said } from '../../src/words/text/text.ts';
import { openGlazeRoom } from '../helpers/room/glazeRoom.ts';
import { handbook } from '../helpers/handbook.ts';
import { noonPlus } from '../helpers/store/storeEvents.ts';
import { openTestStore } from '../helpers/store/storeFile.ts';

const seen = { now: noonPlus(0), zone: 'UTC' };
/** Clears the screen in both encodings (ECMA-48), and reverses the direction of what follows. */
const hostile = 'a\u001b[2Jb\u009b2Jc\u202ed';

const reply: Reply = {
  kind: 'answer',
  title: ['ours ', hostile, said(hostile)],
  facts: [{ label: [hostile], text: [hostile] }],
  actions: [{ label: [hostile], line: `/ask question:"${hostile}"`, press: 'run' }],
  data: { note: hostile },
};

describe('what somebody typed', () => {
  it('reaches no terminal as it is, in whichever part of a reply it stands', () => {
    const acts = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/;
    expect(replyLines(reply, seen, 80, `files/${hostile}`)).not.toMatch(acts);
    const line = jsonLine(replyJson(reply, seen));
    expect(line).not.toMatch(acts);
    expect(JSON.parse(line)).toMatchObject({ data: { note: hostile } });
  });

  it('is not carried out when an offered line is put up for changing', async () => {
    const { desk, studio, member } = await openGlazeRoom();
    const input = new PassThrough();
    const output = new PassThrough();
    output.resume();
    const dispatched: string[] = [];
    const offering = {
      ...desk,
      dispatch: async (request: Parameters<typeof desk.dispatch>[0]): Promise<Reply> => {
        dispatched.push(request.path.join(' '));
        const line = '/stirred bucket:1 note:"x\n/bucket retire bucket:1\n"';
        return {
          kind: 'answer',
          title: ['Hello'],
          actions: [{ label: ['Go'], line, press: 'edit' }],
          data: {},
        };
      },
    };
    const talking = chat({
      desk: offering,
      words: en,
      who: { studio, member: await member('Wren'), role: 'keeper' },
      now: () => noonPlus(0),
      zone: async () => 'UTC',
      history: { lines: [], keep: () => undefined },
      input,
      output: Object.assign(output, { isTTY: true, columns: 80 }),
    });
    input.write('/help\n');
    while (dispatched.length < 1) await new Promise((resolve) => setImmediate(resolve));
    for (let i = 0; i < 20; i += 1) await new Promise((resolve) => setImmediate(resolve));
    input.write('1\n');
    for (let i = 0; i < 20; i += 1) await new Promise((resolve) => setImmediate(resolve));
    input.end();
    await talking;
    expect(dispatched).not.toContain('bucket retire');
  });
});

describe('a bucket’s name', () => {
  it.each(['Gull Gr\u0435y', 'GULL GREY.', 'GullGrey'])(
    '%j looks like Gull Grey, and is not taken for a second bucket',
    async (name) => {
      const { keeper } = await openGlazeRoom();
      await keeper(1, '/bucket add name:"Gull Grey" pail:19l');
      const refused = await keeper(2, `/bucket add name:"${name}" pail:19l`);
      expect(refused).toMatchObject({ ok: false, kind: 'refusal' });
      expect(await keeper(3, '/bucket add name:"Gull Green" pail:19l')).toMatchObject({ ok: true });
    },
  );
});

describe('a full disk', () => {
  it('is called that to whoever says a line, and nothing of it is saved', async () => {
    const store = await openTestStore({
      migrations: [
        ...migrations,
        // A page limit: SQLite reports it like a full disk.
        async (db) => void (await sql`pragma max_page_count = 60`.execute(db)),
      ],
    });
    const bugs: unknown[] = [];
    const report = (error: unknown) => `bug-${bugs.push(error)}`;
    const desk = openDesk({ commands, books: store.books, words: en, handbook, report });
    const studio = await store.people.studioOf('terminal', 'here', 'Elsewhere');
    const member = await store.people.memberOf(studio, 'terminal', 'Wren', 'Wren');
    const say = (key: string, path: string[], typed: Record<string, string>) =>
      desk.dispatch({ key, studio, member, role: 'keeper', now: instant(noonPlus(1)), path, typed });
    await say('0', ['bucket', 'add'], { name: 'Gull Grey', pail: '19l' });
    let last: Reply | undefined;
    for (let i = 1; i < 80 && last?.kind !== 'error'; i += 1)
      last = await say(String(i), ['stirred'], { bucket: '1', note: 'x'.repeat(3_900) });
    expect(last).toMatchObject({ kind: 'error', data: { why: 'full' } });
    expect(last?.title.join('')).toContain('is full, so nothing was saved');
  });

  it('is known by the system’s own word for it too', () => {
    let error: unknown;
    try {
      writeFileSync('/dev/full', 'x');
    } catch (caught) {
      error = caught;
    }
    expect(asStoreProblem(error, 'studio.db')).toMatchObject({ name: 'StoreProblem', kind: 'full' });
  });
});
