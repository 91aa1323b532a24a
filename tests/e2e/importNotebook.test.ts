import { existsSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readColumnsSaid, settleNotebook } from '../../src/notebook/notebookSettings.ts';
import { exportCsv } from '../../src/replies/export/exportCsv.ts';
import {
  importNotebook,
  readNotebook,
  settleByAsking,
  type ImportOutput,
} from '../../src/start/importNotebook.ts';
import { speak } from '../../src/desk/speak.ts';
import { openApp } from '../../src/start/app.ts';
import { checkStates } from '../../src/store/states/checkStates.ts';
import { hours, instant, later } from '../../src/studio/ids.ts';
import { runImport } from '../helpers/runImport.ts';
import { runSay } from '../helpers/sayProcess.ts';
import { storeFile } from '../helpers/store/storeFile.ts';

const start = '2026-05-20T21:00:00Z';

/** A file of its own with this text. */
const withFile = (text: string | Buffer): string => {
  const file = `${storeFile()}.csv`;
  writeFileSync(file, text);
  return file;
};

const now = instant(Date.parse(start));

/** A studio with two buckets, measured yesterday, into which notebooks can be brought. */
const room = async () => {
  const app = await openApp({
    file: storeFile(),
    clock: { now: () => now },
    onBug: (error) => {
      throw error;
    },
  });
  const { people } = app.store;
  const studio = await people.studioOf('terminal', 'here', 'Wrackline Clay Co-op');
  const as = async (name: string) => ({
    studio,
    member: await people.memberOf(studio, 'terminal', name, name),
    role: 'keeper' as const,
  });
  const [keeper] = [await as('Odile'), await as('Wren')];
  for (const [i, line] of [
    '/studio set zone:America/St_Johns units:metric',
    '/studio cup name:"hall cup" kind:ford4',
    '/bucket add name:"Gull Grey" nick:gg pail:19l volume:15l gravity:1.42-1.46 seconds:12-16 cup:"hall cup"',
    '/bucket add name:Sandbar nick:sb pail:19l',
    '/reading bucket:gg gravity:1.45 seconds:15 stirred:yes',
  ].entries()) {
    const reply = await speak(line, `key ${i}`, { ...keeper, now: later(now, hours(-24)) }, app);
    expect(reply.kind).toBe('answer');
  }
  const close = () => app.store.close();
  const bringIn = async (
    text: string,
    {
      columns = '',
      bucket,
      ...rest
    }: { columns?: string; bucket?: string; newBuckets?: boolean; dryRun?: boolean } = {},
  ) => {
    const heard: string[] = [];
    const say = (line: string) => void heard.push(line);
    const output: ImportOutput = { say, refuse: say, progress: () => undefined, most: Infinity };
    const read = readNotebook(withFile(text), {});
    if (!read.ok) throw new Error(read.why);
    const { table } = read;
    const found = settleNotebook(table, {
      columns: readColumnsSaid(columns) ?? new Map(),
      ...(bucket !== undefined && { bucket }),
    });
    if (!found.ok) throw new Error(JSON.stringify(found));
    const { settings } = found;
    const options = {
      newBuckets: false,
      dryRun: false,
      ...rest,
      bucket,
      settings,
      table,
      studio,
      as: 'Odile',
    };
    return { code: await importNotebook(app, options, output), heard };
  };
  const buckets = () => app.store.books.read(studio, (book) => book.buckets());
  const bucket = async (name: string) => {
    const found = (await buckets()).find(({ settings }) => settings.name === name);
    if (!found) throw new Error(`there is no bucket ${name}`);
    return found;
  };
  const lastOf = async (name: string, most: number) => {
    const { no } = await bucket(name);
    return app.store.books.read(studio, (book) => book.entries(no, { most }));
  };
  return { app, studio, now, as, bringIn, buckets, bucket, lastOf, close };
};

describe('each line becomes what a member would have typed then', () => {
  it('a reading, what was added, a stir and a sieving, at their time, by whoever did it', async () => {
    const { bringIn, lastOf, close, app, studio } = await room();
    const { code, heard } = await bringIn(
      [
        'Datum;Glasur;SG;Sekunden;Wasser;Rühren;Sieb;Notiz;Wer',
        '5.3.2025 14:30;gull grey;1,44;13,5;250;x;;"=SUM(A1) etwas dick";wren',
        '6.3.2025;gg;;;;ja;80;;Newcomer',
      ].join('\r\n'),
      { columns: 'Sekunden=seconds, Wasser=water ml, Rühren=stirred, Sieb=mesh' },
    );
    expect({ code, heard }).toEqual({
      code: 0,
      heard: [
        '2 lines are brought in, as import 1. To take it back as a whole: npm run -s import -- --undo 1',
      ],
    });
    const [sieved, stirred, water, reading] = await lastOf('Gull Grey', 4);
    // Newfoundland was at UTC-3:30 until 9 March 2025 (IANA time zone database).
    expect(reading).toMatchObject({
      at: Date.parse('2025-03-05T18:00:00Z'),
      loggedAt: Date.parse(start),
      event: { kind: 'reading', gravity: { value: 1.44 }, flow: { seconds: 13.5 }, stirred: true },
    });
    expect(water).toMatchObject({
      note: '=SUM(A1) etwas dick',
      event: { kind: 'addition', added: { what: 'water', volume: 250 } },
      by: reading?.by,
    });
    const noon = Date.parse('2025-03-06T15:30:00Z');
    expect(stirred).toMatchObject({ at: noon, event: { kind: 'stir' } });
    expect(sieved).toMatchObject({ at: noon, event: { kind: 'sieve', mesh: 80 }, by: stirred?.by });
    const members = await app.store.books.read(studio, (book) => book.members());
    const nameOf = (id: unknown) => members.find((one) => one.id === id)?.name;
    expect([nameOf(reading?.by), nameOf(stirred?.by)]).toEqual(['Wren', 'Newcomer']);
    await close();
  });

  it('its notes stay text, and an export for spreadsheets does not run them', async () => {
    const { app, studio, bringIn, close } = await room();
    await bringIn('Date,Bucket,SG,Note\n2025-03-05,gg,1.44,"=HYPERLINK(""http://x"")"\n');
    const texts: string[] = [];
    await app.store.books.read(studio, async (book) => {
      for await (const { text } of exportCsv(book, {}, 'somebody')) texts.push(text);
    });
    expect(texts.join('')).toContain(`,"'=HYPERLINK(""http://x"")"`);
    await close();
  });

  it('old evidence does not become the present: what was measured since still stands', async () => {
    const { bringIn, bucket, close } = await room();
    const before = await bucket('Gull Grey');
    await bringIn('Date,Bucket,SG,Seconds\n2025-03-05,gg,1.60,25\n2025-04-05,gg,1.58,22\n');
    const after = await bucket('Gull Grey');
    expect(after.believed).toEqual(before.believed);
    expect(after.efflux).toEqual(before.efflux);
    expect(after.stir).toEqual(before.stir);
    expect(after.seq).toBe(before.seq + 2);
    await close();
  });

  it('a notebook of one bucket needs no column for it', async () => {
    const { bringIn, lastOf, close } = await room();
    expect(await bringIn('Date,SG\n2025-03-05,1.44\n', { bucket: 'Sandbar' })).toMatchObject({ code: 0 });
    expect((await lastOf('Sandbar', 1))[0]?.event).toMatchObject({ kind: 'reading' });
    await close();
  });

  it('a note that names a hazard is told to whoever brings it in', async () => {
    const { bringIn, close } = await room();
    const { heard } = await bringIn('Date,Bucket,SG,Note\n2025-03-05,gg,1.44,white lead went in\n');
    expect(heard.join('\n')).toMatch(/Line 2: the note names .*lead.*, which Gull Grey is not marked with/);
    await close();
  });
});

const wrong = [
  ['2025-03-05,gg,14.4,,,', 'be the gravity of a glaze'],
  ['2025-03-05,gg,0.9,,,', 'lighter than water'],
  ['2025-03-05,gg,,9000,,', '9000'],
  ['2025-03-05,gg,,,900 l,', '900 l'],
  ['31.2.2025,gg,1.44,,,', 'its date can’t be read'],
  ['2031-03-05,gg,1.44,,,', 'its time is still to come'],
  ['2025-03-05,Herring,1.44,,,', 'there is no bucket "Herring"'],
  ['2025-03-05,Gull,1.44,,,', 'there is no bucket "Gull"'],
  ['2025-03-05,,1.44,,,', 'it names no bucket'],
  ['2025-03-05,gg,,,,', 'nothing else'],
  ['2025-03-05,gg,1.44,14,,,perhaps', '"perhaps" is neither yes nor no'],
  ['2025-03-05,gg,1,44,,,,x', 'it has 8 cells'],
] as const;

describe('all comes in, or nothing', () => {
  const header = 'Date,Bucket,SG,Seconds,Water,Note,Stirred\n';

  it('not with a line that is refused, as it would be if it were typed', async () => {
    const { bringIn, buckets, close } = await room();
    const before = await buckets();
    for (const [line, why] of wrong) {
      const { code, heard } = await bringIn(`${header}2025-03-04,gg,1.44,14,,fine\n${line}\n`);
      expect(code).toBe(1);
      expect(heard[0]).toMatch(new RegExp(`^Line 3: .*${why}`));
      expect(heard.at(-1)).toMatch(/^1 line of 2 is refused\. Nothing was brought in\./);
      expect(await buckets()).toEqual(before);
    }
    await close();
  });

  it('a dry run shows what each line would become, in time order, and changes nothing', async () => {
    const { app, studio, bringIn, buckets, close } = await room();
    const members = () => app.store.books.read(studio, (book) => book.members());
    const before = [await buckets(), await members()];
    const { code, heard } = await bringIn(
      'Date,Bucket,SG,Seconds,Water,Note,Who\n2025-03-05,Herring,1.44,,200 ml,\n2025-03-04,gg,,14,,fine,Newcomer\n2025-03-06,gg,3,,,\n',
      { dryRun: true, newBuckets: true },
    );
    expect({ code, heard }).toEqual({
      code: 1,
      heard: [
        'Line 3, Gull Grey: hall cup 14 s, for Tue 4 Mar 2025 12:00',
        'Line 2, Herring: gravity 1.44 ± 0.01, for Wed 5 Mar 2025 12:00; 200 ml of water, for Wed 5 Mar 2025 12:00',
        '"gg" is Gull Grey: 2 lines.',
        '"Herring" is Herring: 1 line.',
        'Herring would be a new bucket.',
        'Newcomer would be a new member.',
        'Times are read in America/St_Johns.',
        expect.stringMatching(/^Line 4: 3 can't be the gravity of a glaze/),
        '3 lines: 2 would be brought in, 0 are in the logbook already, 1 would be refused. Nothing was brought in.',
      ],
    });
    expect([await buckets(), await members()]).toEqual(before);
    await close();
  });

  it('brought in again, what is there already stays once; a line that was added since comes in', async () => {
    const { bringIn, bucket, close } = await room();
    const notebook = `${header}2025-03-04,gg,1.44,14,200 ml,fine\n2025-03-04,gg,,,200 ml,\n`;
    await bringIn(notebook);
    const { seq } = await bucket('Gull Grey');
    const again = await bringIn(notebook);
    expect(again.heard).toEqual(['All 2 lines are in the logbook already. Nothing was brought in.']);
    const more = await bringIn(`${notebook}2025-03-05,gg,1.45,,,\n`);
    expect(more.heard[0]).toMatch(
      /^1 line is brought in, as import 2\. 2 lines were in the logbook already\./,
    );
    expect((await bucket('Gull Grey')).seq).toBe(seq + 1);
    await close();
  });

  it('is taken back as one: the states are as before, and a bucket that it made is retired', async () => {
    const { app, studio, as, bringIn, bucket, buckets, close } = await room();
    const before = await buckets();
    await bringIn(`${header}2025-03-04,gg,1.44,14,200 ml,fine\n2025-03-05,Herring,1.5,,,\n`, {
      newBuckets: true,
    });
    const { member } = await as('Odile');
    expect(await app.store.imports.takeBack(studio, 1, member)).toEqual({ ok: true, entries: 3 });
    const { seq: _, ...grey } = await bucket('Gull Grey');
    const { seq: __, ...greyBefore } = before.find(({ settings }) => settings.name === 'Gull Grey') ?? {
      seq: 0,
    };
    expect(grey).toEqual(greyBefore);
    expect(await bucket('Herring')).toMatchObject({ retired: true });
    expect((await bucket('Herring')).believed).toBeUndefined();
    expect(await app.store.imports.takeBack(studio, 1, member)).toMatchObject({
      ok: false,
      known: [{ no: 1 }],
    });
    const again = await bringIn(`${header}2025-03-04,gg,1.44,14,200 ml,fine\n`);
    expect(again.heard[0]).toMatch(/^1 line is brought in, as import 2\./);
    await close();
  });

  it('what somebody has logged since, or taken back already, is not touched by that', async () => {
    const { app, studio, as, now, bringIn, bucket, lastOf, close } = await room();
    await bringIn(`${header}2025-03-04,gg,1.44,14,,\n2025-03-05,gg,1.45,,,\n2025-03-05,Herring,1.5,,,\n`, {
      newBuckets: true,
    });
    const who = await as('Wren');
    const [latest] = await lastOf('Gull Grey', 1);
    const dispatch = (path: string[], typed: Record<string, string>) =>
      app.desk.dispatch({ ...who, key: path.join(), now: later(now, hours(1)), path, typed });
    await dispatch(['undo'], { entry: latest?.id ?? '' });
    await dispatch(['stirred'], { bucket: 'Herring' });
    expect(await app.store.imports.takeBack(studio, 1, who.member)).toEqual({ ok: true, entries: 2 });
    expect(await bucket('Herring')).toMatchObject({ retired: false, stir: { at: now + 3_600_000 } });
    await close();
  });
});

describe('at the studio’s own computer', () => {
  const setUp = async () => {
    const logbook = storeFile();
    await runSay(logbook, [
      '--keeper',
      '/studio set zone:Europe/Lisbon units:metric',
      '/bucket add name:Heron',
    ]);
    return logbook;
  };

  it('a notebook comes in and is taken back, and every state follows from its entries', async () => {
    const logbook = await setUp();
    const file = withFile(
      Buffer.from('\uFEFFDate;Bucket;SG;Stirred\r\n05.03.2025;Heron;1,44;yes\r\n', 'utf16le'),
    );
    const done = await runImport(logbook, [file]);
    expect(done).toMatchObject({
      code: 0,
      stderr: '',
      stdout: expect.stringMatching(/^1 line is brought in, as import 1/),
    });
    expect(await checkStates(logbook)).toMatchObject({ outdated: 0, differing: [] });
    expect(await runImport(logbook, ['--undo', '1'])).toMatchObject({ code: 0, stderr: '' });
    expect(await runImport(logbook, ['--undo', '1'])).toMatchObject({ code: 1, stdout: '' });
    expect(await checkStates(logbook)).toMatchObject({ outdated: 0, differing: [] });
  });

  it('at a pipe it prints what it would ask, and ends with exit code 1', async () => {
    const file = withFile('Date,Bucket,Vis,Water\n3/5/2025,Heron,14,1.200\n');
    const logbook = storeFile();
    const { code, stdout, stderr } = await runImport(logbook, [file]);
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    expect(stderr.split('\n')).toEqual([
      expect.stringMatching(/^What does the column "Vis" mean \("14"\)\? .* Say it with --columns "Vis=…"/),
      expect.stringMatching(/^In which unit are the numbers of the column "Water" \("1\.200"\)\?/),
      expect.stringMatching(/^Which stands first in a date, .*\("3\/5\/2025"\)\?/),
      expect.stringMatching(/^Is the mark in "1\.200" a decimal one/),
      'Nothing was brought in.',
      '',
    ]);
    expect(existsSync(logbook)).toBe(false);
  });

  it('a file that is no notebook is refused in one sentence', async () => {
    const { code, stdout, stderr } = await runImport(storeFile(), [withFile('PK\u0003\u0004rest')]);
    expect({ code, stdout }).toEqual({ code: 1, stdout: '' });
    expect(stderr).toMatch(/^\S+ is a zip archive, [^\n]* Nothing was brought in\.\n$/);
    const why = (text: string) => readNotebook(withFile(text), {});
    expect(why('Date,SG\n1\u0000,2\n')).toMatchObject({
      why: expect.stringContaining('line 2 has a character'),
    });
    expect(why('Date,SG\n1,"2\n')).toMatchObject({ why: expect.stringMatching(/^In line 2 a quote opens/) });
    expect(why('')).toMatchObject({ why: expect.stringContaining('has no lines') });
  });

  it('a studio without a time zone is told to set one first', async () => {
    const logbook = storeFile();
    await runSay(logbook, ['--keeper', '/bucket add name:Heron']);
    const { code, stderr } = await runImport(logbook, [withFile('Date,Bucket,SG\n2025-03-05,Heron,1.44\n')]);
    expect({ code, stderr }).toEqual({
      code: 1,
      stderr: expect.stringMatching(/^The studio’s time zone is not set/),
    });
  });

  it('a wrong command line ends with exit code 2', async () => {
    const file = withFile('Date,Bucket,SG\n');
    const { code, stdout, stderr } = await runImport(storeFile(), [file, '--dates', 'y/m/d']);
    expect({ code, stdout, stderr }).toEqual({
      code: 2,
      stdout: '',
      stderr: '--dates wants d/m/y or m/d/y, not "y/m/d"\n',
    });
  });
});

describe('whoever sits at the terminal', () => {
  const table = () => {
    const read = readNotebook(withFile('Date,Pot,Vis,Water\n3/5/2025,Heron,14,200\n'), {});
    if (!read.ok) throw new Error(read.why);
    return read.table;
  };
  const answering = (answers: (string | undefined)[]) => {
    const asked: string[] = [];
    const ask = (question: string) => {
      asked.push(question.slice(0, question.indexOf('(')).trim());
      return Promise.resolve(answers.shift());
    };
    const quiet = () => undefined;
    return { asked, output: { say: quiet, refuse: quiet, progress: quiet, most: 20, ask } };
  };

  it('is asked one question after another, again after an answer that fits none', async () => {
    const { asked, output } = answering(['bucket', 'speed', 'seconds', 'ml', 'D/M/Y']);
    expect(await settleByAsking(table(), { columns: new Map() }, output)).toMatchObject({
      columns: [
        { meaning: 'date' },
        { meaning: 'bucket' },
        { meaning: 'seconds' },
        { meaning: 'water', unit: 'ml' },
      ],
      order: 'd/m/y',
    });
    expect(asked).toEqual([
      'What does the column "Pot" mean',
      'What does the column "Vis" mean',
      'What does the column "Vis" mean',
      'In which unit are the numbers of the column "Water"',
      'Which stands first in a date, the day or the month',
    ]);
  });

  it('can leave it at that', async () => {
    const { output } = answering([undefined]);
    expect(await settleByAsking(table(), { columns: new Map() }, output)).toBeUndefined();
  });
});
