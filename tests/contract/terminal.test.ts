import { existsSync, writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';
import { verdictOf, verdictSchema, type Answer } from '../helpers/discord/answerSchemas.ts';
import { runSay, type Said } from '../helpers/sayProcess.ts';
import { openStore } from '../../src/store/openStore.ts';
import { settableClock, storeFile } from '../helpers/store/storeFile.ts';

const noon = '2026-03-08T12:00:00Z';
const terminal = (file = storeFile()) => ({
  file,
  run: (...args: string[]) => runSay(file, args),
  /** Runs lines from standard input. */
  read: (input: string, ...args: string[]) => runSay(file, [...args, '-'], { input }),
});
const json = (said: Said): Answer[] => said.answers();
const only = (said: Said): Answer => {
  const [answer, ...more] = said.answers();
  if (!answer || more.length > 0) throw new Error(`one answer was wanted: ${said.stdout}`);
  return answer;
};

const setUp = [
  '/studio set zone:America/St_Johns units:metric',
  '/studio vessel name:"steel cup" tare:85.4g water:100.2g temperature:20C',
  '/studio cup name:"hall cup" kind:ford4',
  '/bucket add name:"Gull Grey" nick:gg pail:19l volume:15l gravity:1.42-1.46 seconds:12-16 cup:ford4 solids:2.6 rest:4h mesh:80',
];
const withGullGrey = async () => {
  const room = terminal();
  const said = await room.run('--at', noon, '--keeper', '--as', 'Tove', '--json', ...setUp);
  expect(said).toMatchObject({ code: 0, stderr: '' });
  return room;
};

describe('options', () => {
  it('an empty store is made where DATABASE_FILE says, with nothing in it', async () => {
    const room = terminal();
    expect(existsSync(room.file)).toBe(false);
    const said = await room.run('--json', '/bucket list');
    expect(only(said)).toMatchObject({ ok: true, data: { buckets: [] } });
    expect(said).toMatchObject({ code: 0, stderr: '' });
    expect(existsSync(room.file)).toBe(true);
  });

  it('the member is “me” until --as names another; --at sets the clock', async () => {
    const room = await withGullGrey();
    await room.run('--at', '2026-03-08T12:30:00Z', '/stirred bucket:gg');
    await room.run('--at', '2026-03-08T09:45:00-03:30', '--as', 'Wren Hale', '/stirred bucket:gg');
    const log = only(await room.run('--at', '2026-03-08T15:00:00Z', '--json', '/bucket log bucket:gg'));
    expect(log.data['entries']).toMatchObject([
      { entry: '1-3', at: '2026-03-08T13:15:00.000Z', by: 'Wren Hale', kind: 'stir' },
      { entry: '1-2', at: '2026-03-08T12:30:00.000Z', by: 'me', kind: 'stir' },
      { entry: '1-1', by: 'Tove', kind: 'setup' },
    ]);
  });

  it('without --at it is now', async () => {
    const room = terminal();
    await room.run('--keeper', '/bucket add name:Heron');
    const log = only(await room.run('--json', '/bucket log bucket:heron'));
    const [{ at }] = z.tuple([z.looseObject({ at: z.iso.datetime() })]).parse(log.data['entries']);
    expect(Math.abs(Date.parse(at) - Date.now())).toBeLessThan(120_000);
  });

  it('--keeper gives the role', async () => {
    const room = terminal();
    expect(await room.run('/bucket add name:Heron')).toMatchObject({ code: 1 });
    expect(await room.run('--keeper', '/bucket add name:Heron')).toMatchObject({ code: 0 });
  });

  it('the same name is the same member in every run', async () => {
    const room = await withGullGrey();
    const logged = only(await room.run('--at', noon, '--as', 'Wren', '--json', '/stirred bucket:gg'));
    const undo = `/undo entry:${String(logged.data['entry'])}`;
    expect(await room.run('--at', noon, '--as', 'Ines', undo)).toMatchObject({ code: 1 });
    expect(await room.run('--at', noon, '--as', 'Wren', undo)).toMatchObject({ code: 0 });
  });

  it('without --json it speaks to a person: the answer is the first line', async () => {
    const room = await withGullGrey();
    const said = await room.run('--at', noon, '/water-or-stir bucket:gg', '/bucket list');
    const [answer, list] = said.stdout.split('\n\n');
    expect(answer).toMatch(/^Gull Grey: Stir it first.*\n/);
    expect(answer).toContain('> Stirred: it runs right:  /stirred bucket:1 look:right after:1');
    expect(list).toMatch(/^0 of 1 ready/);
  });

  it('--studio picks one of several; without it, it says which there are', async () => {
    const room = terminal();
    const store = await openStore(room.file, { clock: settableClock() });
    const first = await store.people.studioOf('discord', '1', 'Wrackline');
    await store.people.studioOf('discord', '2', 'Fogtown');
    await store.close();
    const unsaid = await room.run('--json', '/bucket list');
    expect(unsaid).toMatchObject({ code: 2, stdout: '' });
    expect(unsaid.stderr).toMatch(/--studio/);
    expect(unsaid.stderr).toContain(first);
    for (const studio of [first, 'Fogtown'])
      expect(await room.run('--studio', studio, '--json', '/bucket list')).toMatchObject({ code: 0 });
    expect(await room.run('--studio', 'Nowhere', '/bucket list')).toMatchObject({ code: 2, stdout: '' });
  });
});

describe('exit codes', () => {
  it('0 when every line was answered', async () => {
    expect(await terminal().run('/help', '/bucket list')).toMatchObject({ code: 0, stderr: '' });
  });

  it('1 when one was refused, though the others were answered', async () => {
    const room = await withGullGrey();
    const said = await room.run('--json', '/help', '/stirred bucket:nemo', '/bucket list');
    expect(said.code).toBe(1);
    expect(json(said).map(({ kind }) => kind)).toEqual(['answer', 'refusal', 'answer']);
  });

  it('1 when the reply was a choice, because nothing was answered', async () => {
    const room = await withGullGrey();
    await room.run('--keeper', '/bucket add name:"Gull White"');
    const said = await room.run('--json', '/water-or-stir bucket:gull');
    expect(said.code).toBe(1);
    expect(only(said)).toMatchObject({ ok: false, kind: 'choice' });
    expect(only(said).actions).toHaveLength(2);
  });

  it.each([
    [[]],
    [['--at', 'yesterday', '/help']],
    [['--at', '2026-03-08', '/help']],
    [['--at', '2026-02-30T12:00:00Z', '/help']],
    [['--colour', '/help']],
    [['--as', '', '/help']],
    [['--at']],
  ])('2 on a usage error, said on stderr: %j', async (args) => {
    const said = await terminal().run(...args);
    expect(said).toMatchObject({ code: 2, stdout: '' });
    expect(said.stderr).not.toBe('');
    expect(said.stderr).not.toMatch(/\n +at /);
  });

  it('3 when the file is no database of ours, which is left as it is', async () => {
    const room = terminal();
    writeFileSync(room.file, 'This is a shopping list. '.repeat(400));
    const said = await room.run('--json', '/bucket list');
    expect(said).toMatchObject({ code: 3, stdout: '' });
    expect(said.stderr).toContain('studio.db');
  });
});

describe('lines on standard input', () => {
  it('set clock, member and role as they go; blank lines and comments are skipped; it goes on after a refusal', async () => {
    const room = terminal();
    const said = await room.read(
      [
        '# an evening',
        '',
        '@2026-03-08T12:00:00Z Tove keeper',
        ...setUp,
        '  # still a comment',
        '@2026-03-08T12:10:00Z Wren Hale',
        '/bucket add name:Mine',
        '   /reading bucket:gg gravity:1.44 seconds:14 stirred:yes   ',
        '@2026-03-08T20:00:00-02:30 Ines',
        '/water-or-stir bucket:gg',
        '/bucket log bucket:gg',
      ].join('\r\n'),
      '--json',
    );
    expect(said).toMatchObject({ code: 1, stderr: '' });
    const answers = json(said);
    expect(answers.map(({ kind }) => kind)).toEqual([
      ...Array<string>(4).fill('answer'),
      'refusal',
      'answer',
      'answer',
      'answer',
    ]);
    // 22:30Z is 10 h 20 min after the reading.
    expect(verdictOf(answers[6] ?? only(said))).toMatchObject({
      step: 'stir',
      hoursSinceStir: expect.closeTo(10.333, 3),
    });
    expect(answers[7]?.data['entries']).toMatchObject([{ by: 'Wren Hale' }, { by: 'Tove' }]);
  });

  it('a wrong settings line is a usage error, and earlier lines stay logged', async () => {
    const room = await withGullGrey();
    const said = await room.read('/stirred bucket:gg\n@noon Wren\n/stirred bucket:gg\n', '--json');
    expect(said.code).toBe(2);
    expect(json(said)).toHaveLength(1);
    expect(said.stderr).toMatch(/@noon Wren/);
  });

  it('ends quietly when the reader closes the pipe, and runs no further line', async () => {
    const room = await withGullGrey();
    const input = '/stirred bucket:gg\n'.repeat(3000);
    const said = await runSay(room.file, ['--at', noon, '--json', '-'], { input, enough: 100 });
    expect(said).toMatchObject({ code: 0, stderr: '' });
    const log = only(await room.run('--json', '/bucket log bucket:gg most:1'));
    const [{ entry }] = z.tuple([z.looseObject({ entry: z.string() })]).parse(log.data['entries']);
    expect(Number(entry.replace('1-', ''))).toBeLessThan(3000);
  });

  it('NUL bytes are dropped from what is typed', async () => {
    const room = await withGullGrey();
    const said = await room.read('/stirred bucket:g\0g note:"a\0b"\n', '--json');
    expect(said.code).toBe(0);
    const log = only(await room.run('--json', '/bucket log bucket:gg most:1'));
    expect(log.data['entries']).toMatchObject([{ note: 'ab' }]);
  });

  it('reserved words in a value run nothing', async () => {
    const room = await withGullGrey();
    const file = `${room.file}.made`;
    for (const note of [
      `$(touch ${file})`,
      `\`touch ${file}\``,
      `; touch ${file}`,
      `| tee ${file}`,
      '&& false',
    ])
      expect((await room.run('--json', `/stirred bucket:gg note:"${note}"`)).code).toBe(0);
    expect((await room.run('--json', '/stirred bucket:gg note:/bucket list')).code).toBe(0);
    expect((await room.run('--json', '/stirred bucket:gg note:@2026-01-01T00:00:00Z Wren keeper')).code).toBe(
      0,
    );
    expect(existsSync(file)).toBe(false);
    const log = only(await room.run('--json', '/bucket log bucket:gg'));
    const entries = z.array(z.looseObject({ kind: z.string(), note: z.string().optional() }));
    const notes = entries.parse(log.data['entries']).flatMap(({ note }) => note ?? []);
    expect(notes).toContain('/bucket list');
    expect(notes).toContain(`$(touch ${file})`);
  });
});

describe('the data of each command', () => {
  const logged = z.looseObject({ entry: z.string().regex(/^\d+-\d+$/), verdict: verdictSchema });

  it('is what a script is promised', async () => {
    const room = await withGullGrey();
    const lines = [
      '/reading bucket:gg weight:229.7g vessel:"steel cup" seconds:24 cup:ford4 gap:7cm temperature:18C stirred:yes seen:none note:"first"',
      "/reading bucket:gg gravity:1.5 scale:sg within:0.01 seconds:won't-run look:thick stirred:yes seen:clear-water,cake",
      '/stirred bucket:gg minutes:3 with:mixer seen:cake-gone',
      '/added bucket:gg what:water amount:450ml note:"from the tap"',
      '/sieved bucket:gg mesh:80',
      '/water-or-stir bucket:gg',
      '/bucket show bucket:gg',
      '/bucket log bucket:gg',
      '/bucket list',
    ];
    const said = await room.run('--at', noon, '--json', ...lines);
    expect(said).toMatchObject({ code: 0, stderr: '' });
    const [weighed, stated, stirred, added, sieved, asked, shown, log, list] = json(said);
    z.looseObject({
      entry: z.literal('1-2'),
      gravity: z.number(),
      u95: z.number().positive(),
      kinematicViscosity: z.number(),
      volumeL: z.number().positive(),
      verdict: verdictSchema,
    }).parse(weighed?.data);
    // (229.7 − 85.4) / 100.2; Ford #4 at 24 s is 3.85 (24 − 4.49) mm²/s.
    expect(weighed?.data['gravity']).toBeCloseTo(1.4401, 4);
    expect(weighed?.data['kinematicViscosity']).toBeCloseTo(75.11, 2);
    expect(stated?.data).toMatchObject({ gravity: 1.5, u95: 0.01 });
    expect(stated?.data).not.toHaveProperty('kinematicViscosity');
    for (const answer of [stated, stirred, added, sieved]) logged.parse(answer?.data);
    verdictSchema.parse(asked?.data['verdict']);
    z.looseObject({
      bucket: z.looseObject({
        number: z.literal(1),
        name: z.literal('Gull Grey'),
        volumeL: z.number(),
        window: z.object({ low: z.literal(1.42), high: z.literal(1.46) }),
        efflux: z.looseObject({ low: z.literal(12), high: z.literal(16) }),
        solidsGravity: z.literal(2.6),
      }),
      dryGramsPerLitre: z.number().positive(),
      solidsVolumeFraction: z.number().positive().max(1),
    }).parse(shown?.data);
    z.array(z.looseObject({ entry: z.string(), at: z.iso.datetime(), by: z.string(), kind: z.string() }))
      .length(6)
      .parse(log?.data['entries']);
    expect(list?.data['buckets']).toMatchObject([{ number: 1, name: 'Gull Grey' }]);
    const undone = only(await room.run('--at', noon, '--json', '/undo entry:1-5'));
    logged.parse(undone.data);
  });

  it('a held bucket says since when, by the clock', async () => {
    const room = await withGullGrey();
    const said = await room.run(
      '--at',
      noon,
      '--keeper',
      '--json',
      '/bucket hold bucket:gg why:"frozen"',
      '/bucket show bucket:gg',
    );
    const [held, shown] = json(said);
    expect(held?.data).toMatchObject({ entry: '1-2', verdict: { step: 'on-hold' } });
    expect(shown?.data['bucket']).toMatchObject({
      hold: { cause: 'frozen', why: 'frozen', since: '2026-03-08T12:00:00.000Z' },
    });
  });

  it('the other options of the contract are there too', async () => {
    const room = await withGullGrey();
    const keeper = await room.run(
      '--at',
      noon,
      '--keeper',
      '--json',
      '/studio set zone:Europe/Paris units:imperial',
      '/studio set units:us',
      '/studio cup name:"own cup" kind:own',
      '/studio cup name:"z" kind:zahn2',
      '/studio cup name:"i" kind:iso4',
      '/bucket change bucket:gg rest:2h mesh:60',
      '/bucket hold bucket:gg why:frozen',
      '/bucket release bucket:gg',
      ...['dry', 'flocculant', 'deflocculant', 'glaze', 'other'].map(
        (what) => `/added bucket:gg what:${what} note:"x"`,
      ),
      '/added bucket:gg what:dry amount:"2 lb 3 oz"',
      ...['hand', 'whisk', 'mixer'].map((tool) => `/stirred bucket:gg minutes:3 with:${tool}`),
      '/reading bucket:gg gravity:44.5 scale:baume stirred:yes',
      '/reading bucket:gg gravity:88 scale:twaddell stirred:yes',
      '/reading bucket:gg look:thin stirred:no',
      '/reading bucket:gg seen:lumps,skin',
      '/bucket retire bucket:gg',
    );
    expect(json(keeper).filter(({ ok }) => !ok)).toEqual([]);
    expect(keeper.code).toBe(0);
  });

  it('a hydrometer’s reading is ± 0.03 and a stated one ± 0.01 unless it says better', async () => {
    const room = await withGullGrey();
    const said = await room.run(
      '--at',
      noon,
      '--json',
      '/reading bucket:gg gravity:44.3 scale:baume stirred:yes',
      '/reading bucket:gg gravity:1.44 stirred:yes',
      '/reading bucket:gg gravity:1.44 within:0.003 stirred:yes',
    );
    // 145 / (145 − 44.3)
    expect(json(said).map(({ data }) => [data['gravity'], data['u95']])).toEqual([
      [expect.closeTo(1.43992, 5), 0.03],
      [1.44, 0.01],
      [1.44, 0.003],
    ]);
  });
});
