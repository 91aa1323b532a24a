import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { csvColumns } from '../../../src/replies/export/exportCsv.ts';
import { csvLine } from '../../../src/replies/export/csvLine.ts';
import { speak } from '../../../src/desk/speak.ts';
import { readBucketEvent } from '../../../src/store/entries/eventRow.ts';
import type { BucketEntry } from '../../../src/studio/bucket/bucketEvent.ts';
import { foldBucket } from '../../../src/studio/bucket/fold/foldBucket.ts';
import { entryId, instant, memberId, seq, streamNo, type Role } from '../../../src/studio/ids.ts';
import { demoStudio } from '../../helpers/demoStudio.ts';
import { exportSchema, type Exported } from '../../helpers/store/exportSchema.ts';
import { openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

let demo: Awaited<ReturnType<typeof demoStudio>>;
beforeAll(async () => {
  demo = await demoStudio('2026-05-20T21:00:00Z');
});
afterAll(() => demo.close());

let lines = 0;
const say = async (line: string, as = 'Odile', role: Role = 'keeper') =>
  speak(line, `export:${++lines}`, { ...(await demo.as(as, role)), now: demo.now }, demo.app);
const exported = async (line = '/export'): Promise<Exported> => {
  const reply = await say(line);
  expect(reply).toMatchObject({ kind: 'answer', private: true, fleeting: true });
  return exportSchema.parse(JSON.parse(reply.file?.content ?? ''));
};

const entryOf = (row: Exported['entries'][number]): BucketEntry => ({
  id: entryId(streamNo(row.stream), seq(row.seq)),
  stream: streamNo(row.stream),
  seq: seq(row.seq),
  at: instant(Date.parse(row.at)),
  loggedAt: instant(Date.parse(row.loggedAt)),
  by: memberId(row.by),
  event: readBucketEvent(JSON.stringify(row.event)),
});

describe('the whole studio as one JSON document', () => {
  it('has everything, by the format that is described, down to what was taken back', async () => {
    await say('/stirred bucket:gg minutes:1 note:"by mistake"', 'Wren', 'member');
    const [last] = await demo.app.store.books.read(demo.studio, (book) =>
      book.entries(streamNo(1), { most: 1 }),
    );
    await say(`/undo entry:${last?.id ?? ''}`, 'Wren', 'member');
    const { entries, members, studio, buckets } = await exported();
    const undone = entries.find(({ entry }) => entry === last?.id);
    expect(undone).toMatchObject({
      note: 'by mistake',
      event: { kind: 'stir' },
      undoneBy: (last?.seq ?? 0) + 1,
    });
    await demo.app.store.books.read(demo.studio, async (book) => {
      const streams = await book.streams();
      expect([...new Set(entries.map(({ stream }) => stream))].sort((a, b) => a - b)).toEqual(streams);
      for (const stream of streams) {
        const all = await book.entries(stream, { most: 10_000 });
        expect(entries.filter((one) => one.stream === stream).map(({ entry }) => entry)).toEqual(
          all.map(({ id }) => id).reverse(),
        );
      }
      expect(members).toEqual(await book.members());
      expect(buckets).toEqual(
        JSON.parse(JSON.stringify((await book.buckets()).map((state) => ({ ...state, belief: undefined })))),
      );
    });
    expect(studio).toMatchObject({ zone: 'America/St_Johns', recipes: [{ name: 'Gull Grey' }] });
    expect(new Set(entries.map(({ by }) => by)).size).toBeGreaterThan(3);
  });

  it('has the studio’s own notes, those that were not removed, and not with one bucket alone', async () => {
    await say('/note add title:"Where the cookies are" text:"By the kiln door." words:"cookie, shelf"');
    await say('/note add title:"Where the wax is" text:"In the cupboard."');
    await say('/note remove note:"Where the wax is"');
    const { notes } = await exported();
    expect(notes.map(({ title }) => title)).toEqual(['Cookies for runny glazes', 'Where the cookies are']);
    expect(notes[1]).toMatchObject({ text: 'By the kiln door.', words: 'cookie, shelf', at: demo.now });
    expect((await exported('/export bucket:gg')).notes).toEqual([]);
  });

  it('is enough to work every bucket’s state out again, to the last digit', async () => {
    const { entries, buckets } = await exported();
    expect(buckets.length).toBeGreaterThan(10);
    for (const bucket of buckets) {
      const own = entries.filter(({ stream }) => stream === bucket.no).map(entryOf);
      const folded = foldBucket(streamNo(bucket.no), own);
      // What is believed of it is not exported, since it follows from the entries.
      expect(JSON.parse(JSON.stringify({ ...folded, belief: undefined })), bucket.settings.name).toEqual(
        bucket,
      );
    }
  });

  it('narrows to one bucket and to the last days', async () => {
    const all = await exported();
    const one = await exported('/export bucket:gg');
    expect(one.entries).toEqual(all.entries.filter(({ stream }) => stream === 1));
    expect(one.buckets.map(({ settings }) => settings.name)).toEqual(['Gull Grey']);
    const since = demo.now - 3 * 86_400_000;
    const lately = await exported('/export bucket:gg days:3');
    expect(Date.parse(lately.since ?? '')).toBe(since);
    expect(lately.entries).toEqual(one.entries.filter(({ at }) => Date.parse(at) >= since));
    expect(lately.entries.length).toBeGreaterThan(0);
    expect(lately.entries.length).toBeLessThan(one.entries.length);
  });

  it('holds no secret: no sessions, passcodes, codes, tokens or platform ids', async () => {
    const { app, studio } = demo;
    await app.store.people.memberOf(studio, 'discord', '987654321098765432', 'Sanderling');
    const { door } = app.store.room(studio);
    await door.take('odile', {
      member: (await demo.as('Odile')).member,
      name: 'Odile',
      secret: 'scrypt:salt:key',
    });
    await app.store.kept.set(`room-passcode:${studio}`, 'scrypt:pass:code');
    const { data } = await say('/link', 'Wren', 'member');
    const text = (await say('/export')).file?.content ?? '';
    expect(text).toContain('Sanderling');
    for (const secret of ['987654321098765432', 'scrypt', String(data['code']), 'hash', 'pepper'])
      expect(text).not.toContain(secret);
  });

  it('is for keepers', async () => {
    expect((await say('/export', 'Wren', 'member')).kind).toBe('refusal');
  });
});

/** An independent RFC 4180 parser: doubled quotes inside quotes, CRLF between rows. */
const readCsv = (text: string): string[][] => {
  const rows: string[][] = [];
  let [row, cell, quoted]: [string[], string, boolean] = [[], '', false];
  for (let i = 0; i < text.length; i += 1) {
    const char = text[i] ?? '';
    if (quoted) {
      if (char !== '"') cell += char;
      else if (text[i + 1] === '"') [cell, i] = [`${cell}"`, i + 1];
      else quoted = false;
    } else if (char === '"' && cell === '') quoted = true;
    else if (char === ',') [row, cell] = [[...row, cell], ''];
    else if (char === '\r' && text[i + 1] === '\n') {
      rows.push([...row, cell]);
      [row, cell, i] = [[], '', i + 1];
    } else {
      expect(char).not.toMatch(/["\r\n]/);
      cell += char;
    }
  }
  expect([row, cell, quoted]).toEqual([[], '', false]);
  return rows;
};

describe('the table for a spreadsheet', () => {
  it('has one row an entry, each of the width of its header, in units that the header names', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(
      5,
      '/reading bucket:gg gravity:1.44 within:0.01 seconds:14 cup:ford4 gap:7cm temperature:18C stirred:yes',
    );
    await room.say(6, '/added bucket:gg what:water amount:"2 cups"');
    await room.say(6, '/added bucket:gg what:flocculant amount:15ml');
    await room.say(7, '/stirred bucket:gg minutes:3 with:mixer note:"said, \\"enough\\""');
    await room.say(8, '/undo entry:1-4');
    const reply = await room.request(9, { path: ['export'], typed: { as: 'csv' }, role: 'keeper' });
    const file = reply.file as { content: string } | undefined;
    const [header = [], ...rows] = readCsv(file?.content ?? '');
    expect(header).toEqual([...csvColumns]);
    expect(rows.map(({ length }) => length)).toEqual(Array.from({ length: 4 }, () => header.length));
    const table = rows.map((row) => Object.fromEntries(header.map((name, i) => [name, row[i] ?? ''])));
    expect(table[0]).toMatchObject({
      entry: '1-2',
      name: 'Gull Grey',
      at_utc: '2026-03-01T12:05:00.000Z',
      by: 'Wren',
      kind: 'reading',
      gravity_sg: '1.44',
      gravity_u95_sg: '0.01',
      flow_cup: 'ford4',
      flow_s: '14',
      gap_mm: '70',
      temperature_c: '18',
      stirred: 'true',
      taken_back_by: '',
    });
    // A US cup is 236.5882365 ml (NIST Handbook 44, appendix C).
    expect(Number(table[1]?.['volume_ml'])).toBeCloseTo(473.176473, 6);
    expect(table[2]).toMatchObject({ added: 'flocculant', volume_ml: '15', taken_back_by: '1-6' });
    expect(table[3]).toMatchObject({ kind: 'stir', stir_min: '3', tool: 'mixer', note: 'said, "enough"' });
  });

  it.each(['=1+1', '+1', '-1', '@SUM(A1)', '\tx', '\rx', '\nx', '＝1', '=cmd|" /C calc"!A1', '-2+3+cmd'])(
    'lets no spreadsheet carry out what a member typed: %j',
    (typed) => {
      const [[cell = '', other = '', number = ''] = []] = readCsv(csvLine([typed, 'plain', -5]));
      expect(cell).toBe(`'${typed}`);
      expect([other, number]).toEqual(['plain', '-5']);
    },
  );
});
