import { PassThrough } from 'node:stream';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { chat } from '../../../src/terminal/chat.ts';
import { demoStudio } from '../../helpers/demoStudio.ts';

let demo: Awaited<ReturnType<typeof demoStudio>>;
beforeAll(async () => {
  demo = await demoStudio('2026-05-20T21:00:00Z');
});
afterAll(() => demo.close());

/** A terminal of 80 columns with typed input. */
const terminal = async (typed: string[], before: string[] = [], keepFile?: () => string) => {
  const input = new PassThrough();
  const output = Object.assign(new PassThrough(), { isTTY: true, columns: 80 });
  let shown = '';
  output.on('data', (chunk: Buffer) => (shown += chunk.toString()));
  const kept: string[][] = [];
  const done = chat({
    desk: demo.app.desk,
    words: demo.app.words,
    who: await demo.as('Wren'),
    now: () => demo.now,
    zone: async () => 'America/St_Johns',
    history: { lines: before, keep: (lines) => kept.push([...lines]) },
    ...(keepFile && { keepFile }),
    input,
    output,
  });
  const settled = async (text: string) => {
    const from = shown.length;
    input.write(text);
    for (let quiet = 0, length = from; quiet < 3; length = shown.length) {
      await new Promise((resolve) => setTimeout(resolve, 20));
      quiet = shown.length > from && shown.length === length ? quiet + 1 : 0;
    }
  };
  for (const text of typed) await settled(text);
  input.write('exit\r');
  await done;
  return { shown, kept };
};

const lastEntry = async (nick: string) =>
  demo.app.store.books.read(demo.studio, async (book) => {
    const bucket = (await book.buckets()).find(({ settings }) => settings.nick === nick);
    return bucket ? (await book.entries(bucket.no, { most: 1 }))[0] : undefined;
  });

describe('talking at a terminal', () => {
  it('answers a line, and completes commands and buckets with Tab', async () => {
    const { shown } = await terminal(['/water-o\t', 'bucket:gull g\t', '\r']);
    expect(shown).toContain('/water-or-stir bucket:"Gull Grey"');
    expect(shown).toContain('Gull Grey: Use it.');
  });

  it('takes the number of an offered line for the press of its button', async () => {
    const { shown } = await terminal(['/water-or-stir bucket:sb\r', '1\r']);
    expect(shown).toContain('> 1 I poured');
    const last = await lastEntry('sb');
    expect(last?.event).toMatchObject({ kind: 'addition', added: { what: 'water' } });
  });

  it('puts a line up for changing when its button asks for more', async () => {
    const { shown } = await terminal(['/water-or-stir bucket:db\r', '1\r', 'seconds:15 stirred:yes\r']);
    expect(shown).toContain('1 Log a reading');
    const last = await lastEntry('db');
    expect(last?.event).toMatchObject({ kind: 'reading', flow: { seconds: 15 } });
  });

  it('takes what was measured in plain words, and logs it by a press', async () => {
    const before = await lastEntry('ca');
    const { shown } = await terminal(['capelin 1.47 15 sec stirred\r', '1\r']);
    expect(shown).toContain('Capelin: gravity 1.47, 15 sec, stirred. Log it?');
    const last = await lastEntry('ca');
    expect(last?.seq).toBe((before?.seq ?? 0) + 1);
    expect(last?.event).toMatchObject({ kind: 'reading', gravity: { value: 1.47 }, stirred: true });
  });

  it('takes yes for the press that “Log it?” and “Take it back?” ask for, and for no other', async () => {
    await terminal(['capelin 1.46 15 sec stirred\r', 'yes\r']);
    expect((await lastEntry('ca'))?.event).toMatchObject({ kind: 'reading', gravity: { value: 1.46 } });
    expect((await terminal(['undo\r', 'y\r'])).shown).toMatch(/Take it back\?[^]*Took back \d+-\d+\./);
    const before = await lastEntry('sb');
    await terminal(['/water-or-stir bucket:sb\r', 'yes\r']);
    expect(await lastEntry('sb')).toEqual(before);
  });

  it('brings back what was typed before, and keeps what is typed now', async () => {
    const { shown, kept } = await terminal(['\x1b[A', '\r'], ['/bucket list']);
    expect(shown).toContain('12 · Bog Iron');
    expect(kept.at(0)).toEqual(['/bucket list']);
  });

  it('goes on after a refusal', async () => {
    const { shown } = await terminal(['/bucket retire bucket:gg\r', '/help\r']);
    expect(shown).toContain('is for keepers');
    expect(shown).toContain('What to type');
  });
});

it('a file that cannot be kept does not hide the answer that it came with', async () => {
  const { shown } = await terminal(['/batch plan recipe:"silica 100" volume:1l gravity:1.45\r'], [], () => {
    throw new Error('ENOSPC: no space left on device');
  });
  expect(shown).toContain('of powder in');
  expect(shown.match(/could not be saved|not kept/g)).toHaveLength(1);
});
