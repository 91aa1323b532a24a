import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { gunzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { importExport } from '../../src/start/imports/importExport.ts';
import { checkStates } from '../../src/store/states/checkStates.ts';
import { entryId, seq, streamNo, studioStream } from '../../src/studio/ids.ts';
import { demoStudio } from '../helpers/demoStudio.ts';
import { runImport } from '../helpers/runImport.ts';
import { runSay } from '../helpers/sayProcess.ts';
import { exportText } from '../helpers/store/exportText.ts';
import { gullGrey, loggedAt, stirredReading } from '../helpers/store/storeEvents.ts';
import { openTestStore, settableClock, storeFile } from '../helpers/store/storeFile.ts';

const demo = await (async () => {
  const { app, studio, close } = await demoStudio('2026-05-20T21:00:00Z');
  const text = await exportText(app.store, studio);
  await close();
  return text;
})();

/** A logbook that does not exist yet, and a file beside it with this text. */
const withFile = (text: string) => {
  const logbook = storeFile();
  const file = `${logbook}.json`;
  writeFileSync(file, text);
  return { logbook, file };
};
const brought = { studio: ['--studio', 'Brought'] };

describe('the demo’s export', () => {
  it('comes in as a new studio with the same states, and exports the same again', async () => {
    const { file } = withFile(demo);
    const store = await openTestStore();
    const { id, entries } = await importExport(
      file,
      { store, clock: settableClock() },
      { name: 'Brought', anew: false },
    );
    expect(JSON.parse(await exportText(store, id))).toEqual(JSON.parse(demo));
    expect(entries).toBe(JSON.parse(demo).entries.length);
    expect(await checkStates(store.file)).toMatchObject({ studios: 1, outdated: 0, differing: [] });
  });

  it('a member is linked with the help of whoever runs the bot: their code from the terminal, typed in the room', async () => {
    const { logbook, file } = withFile(demo);
    expect(await runImport(logbook, [file, ...brought.studio])).toMatchObject({ code: 0, stderr: '' });
    const said = await runSay(logbook, ['--as', 'Wren', '--json', '/link']);
    const code = String(said.answers()[0]?.data['code']);
    const store = await openTestStore({ file: logbook, clock: { now: () => settableClock().now() } });
    const [studio] = await store.people.studios();
    if (!studio) throw new Error('no studio was brought in');
    const wren = await store.people.memberOf(studio.id, 'terminal', 'Wren', 'Wren');
    const before = JSON.parse(demo).members.find(({ name }: { name: string }) => name === 'Wren');
    expect(wren).toBe(before.id);
    const onDiscord = await store.people.memberOf(studio.id, 'discord', '7', 'wren_on_discord');
    const linked = await store.books.writeOnce(studio.id, 'link', async (book) => ({
      keep: true,
      value: await book.link(onDiscord, code, settableClock().now()),
    }));
    expect(linked).toEqual({ ok: true, into: wren });
  });
});

it('after a link, an export names the member who stayed, and so comes in', async () => {
  const store = await openTestStore();
  const studio = await store.people.studioOf('discord', '1', 'before');
  const [old, stays] = [
    await store.people.memberOf(studio, 'discord', '1', 'Juno'),
    await store.people.memberOf(studio, 'room', '1', 'Juno Bay'),
  ];
  await store.books.writeOnce(studio, 'fill', async (book) => {
    await book.logStudio({ kind: 'keeper', member: old, keeper: true }, loggedAt(old, 0));
    await book.open(gullGrey, loggedAt(old, 1));
    await book.log(streamNo(1), { kind: 'hold', cause: 'other', why: 'a sponge' }, loggedAt(old, 2));
    const { code } = await book.offerLink(stays, loggedAt(old, 3).at);
    return { keep: true, value: await book.link(old, code, loggedAt(old, 3).at) };
  });
  const text = await exportText(store, studio);
  const { file } = withFile(text);
  const { id } = await importExport(file, { store, clock: settableClock() }, { name: 'after', anew: false });
  expect(JSON.parse(await exportText(store, id))).toEqual(JSON.parse(text));
  const keeper = await store.books.read(id, (book) => book.entry(entryId(studioStream, seq(1))));
  expect(keeper?.event).toMatchObject({ member: stays });
});

it('a note that a keeper removed stays removed', async () => {
  const store = await openTestStore();
  const studio = await store.people.studioOf('discord', '1', 'before');
  const ana = await store.people.memberOf(studio, 'discord', '1', 'Ana');
  await store.books.writeOnce(studio, 'fill', async (book) => {
    await book.open(gullGrey, loggedAt(ana, 0));
    const { entry } = await book.log(streamNo(1), stirredReading(1.44), loggedAt(ana, 1, 'said in anger'));
    return { keep: true, value: await book.redact(entry.id, ana) };
  });
  const text = await exportText(store, studio);
  expect(text).not.toContain('anger');
  const { file } = withFile(text);
  const { id } = await importExport(file, { store, clock: settableClock() }, { name: 'after', anew: false });
  expect(JSON.parse(await exportText(store, id))).toEqual(JSON.parse(text));
});

const line = (no: number, change: (text: string) => string) =>
  demo
    .split('\n')
    .map((text, i) => (i + 1 === no ? change(text) : text))
    .join('\n');

describe('a file that does not come in', () => {
  it.each([
    ['that is no export', 'gravity,bucket\n1.44,3\n', { kind: 'not-an-export' }],
    ['that is empty', '', { kind: 'not-an-export' }],
    ['of a newer format', demo.replace('"format":1', '"format":2'), { kind: 'newer-format', format: 2 }],
    [
      'of a part',
      demo.replace('"studio":', '"since":"2026-05-01T00:00:00.000Z","studio":'),
      { kind: 'a-part' },
    ],
    ['cut off in its head', demo.slice(0, 2000), { kind: 'cut-off', line: 1 }],
    [
      'cut off in an entry',
      `${demo.split('\n').slice(0, 299).join('\n')}\n{"en`,
      { kind: 'cut-off', line: 300 },
    ],
    ['cut off between entries', demo.split('\n').slice(0, 200).join('\n'), { kind: 'cut-off', line: 200 }],
    ['without its last line', demo.replace(/\]\}\n$/, ''), { kind: 'cut-off' }],
    ['with a broken line', line(100, (text) => text.replace('"seq"', 'seq')), { kind: 'damaged', line: 100 }],
    ['with a line too few', demo.split('\n').toSpliced(99, 1).join('\n'), { kind: 'damaged', line: 100 }],
    ['with a line twice', line(100, (text) => `${text}\n${text}`), { kind: 'damaged', line: 101 }],
    [
      'with an unknown event',
      line(50, (text) => text.replace(/"kind":"\w+"/, '"kind":"x"')),
      { kind: 'damaged', line: 50 },
    ],
    [
      'with a member twice',
      demo.replace(/"members":\[(\{[^}]*\})/, '"members":[$1,$1'),
      { kind: 'damaged', line: 1 },
    ],
    ['with more after its end', `${demo}{}\n`, { kind: 'damaged' }],
    [
      'with a state changed by hand',
      demo.replace('"retired":false', '"retired":true'),
      { kind: 'differs', what: 'buckets' },
    ],
    [
      'with an entry changed by hand',
      demo.replaceAll(/"value":1\.4\d+/g, '"value":1.5'),
      { kind: 'differs', what: 'buckets' },
    ],
    [
      'with a keeper added by hand',
      demo.replace('"keepers":[', '"keepers":["me",'),
      { kind: 'differs', what: 'studio' },
    ],
  ])('%s', async (_, text, why) => {
    const { file } = withFile(text);
    const store = await openTestStore();
    const done = importExport(file, { store, clock: settableClock() }, { name: 'Brought', anew: false });
    await expect(done).rejects.toMatchObject({ name: 'ImportProblem', why });
    expect(await store.people.studios()).toEqual([]);
    expect(await checkStates(store.file)).toMatchObject({ streams: 0 });
  });

  it('is answered with one sentence and exit code 1, and no logbook is made for it', async () => {
    const { logbook, file } = withFile('\u0000\u0001PK');
    const { code, stdout, stderr } = await runImport(logbook, [file, ...brought.studio]);
    expect(stderr).toMatch(/^[^\n]+ is not an export: [^\n]+ Nothing was brought in\.\n$/);
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    expect(existsSync(logbook)).toBe(false);
  });

  it('whose studio is there already, and the one that is there stays as it is', async () => {
    const { logbook, file } = withFile(demo);
    expect(await runImport(logbook, [file, ...brought.studio])).toMatchObject({ code: 0 });
    const { code, stderr } = await runImport(logbook, [file, ...brought.studio]);
    expect({ code, stderr }).toEqual({
      code: 1,
      stderr: expect.stringMatching(/^There is a studio Brought .*\n$/),
    });
    expect(await checkStates(logbook)).toMatchObject({ studios: 1, streams: 15, differing: [] });
  });

  it('leaves no trace in a logbook that has a studio, even when its last line is what is wrong', async () => {
    const { logbook, file } = withFile(demo.replace(/\]\}\n$/, ''));
    await runSay(logbook, ['--keeper', '/bucket add name:Heron']);
    const before = await checkStates(logbook);
    expect(await runImport(logbook, [file, ...brought.studio])).toMatchObject({ code: 1 });
    expect(await checkStates(logbook)).toEqual(before);
  });

  it.each([[[]], [['nowhere.json']]])(
    'a wrong command line is answered with exit code 2: %j',
    async (args) => {
      const logbook = storeFile();
      expect(await runImport(logbook, args)).toMatchObject({ code: 2, stdout: '' });
      expect(existsSync(logbook)).toBe(false);
    },
  );
});

it('what an earlier release exported comes in by its entries, when told to', async () => {
  const kept = new URL('../fixtures/demo-0.1.0.json.gz', import.meta.url);
  const { logbook, file } = withFile(gunzipSync(readFileSync(kept)).toString('utf8'));
  const refused = await runImport(logbook, [file, ...brought.studio]);
  expect(refused).toMatchObject({ code: 1, stderr: expect.stringContaining('--states-anew') });
  expect(await runImport(logbook, [file, ...brought.studio, '--states-anew'])).toMatchObject({ code: 0 });
  expect(await checkStates(logbook)).toMatchObject({ streams: 15, differing: [] });
});
