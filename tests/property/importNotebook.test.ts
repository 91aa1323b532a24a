import fc from 'fast-check';
import { expect, it } from 'vitest';
import { settleNotebook } from '../../src/notebook/notebookSettings.ts';
import { readTable } from '../../src/notebook/readTable.ts';
import { openApp, type App } from '../../src/start/app.ts';
import { importNotebook } from '../../src/start/importNotebook.ts';
import { speak } from '../../src/desk/speak.ts';
import { checkStates } from '../../src/store/states/checkStates.ts';
import { instant, minutes, type Instant } from '../../src/studio/ids.ts';
import { isoInstant } from '../../src/studio/time/isoInstant.ts';
import { storeFile } from '../helpers/store/storeFile.ts';

const now = instant(Date.UTC(2026, 2, 1, 12));
const setUpAt = instant(Date.UTC(2025, 0, 1));

const row = fc.record(
  {
    minute: fc.nat(400_000),
    bucket: fc.constantFrom('Heron', 'Gull Grey'),
    gravity: fc.integer({ min: 130, max: 160 }).map((value) => (value / 100).toFixed(2)),
    seconds: fc.integer({ min: 8, max: 40 }).map(String),
    stirred: fc.constantFrom('yes', 'no'),
    water: fc.integer({ min: 50, max: 900 }).map((volume) => `${volume} ml`),
    note: fc.constantFrom('fine', 'a "quoted", word', '=1+1'),
  },
  { requiredKeys: ['minute', 'bucket', 'gravity'] },
);
type Row = typeof row extends fc.Arbitrary<infer T> ? T : never;

const at = ({ minute }: Row): Instant => instant(setUpAt + minutes(1 + minute));
const quoted = (text: string | undefined) => `"${(text ?? '').replaceAll('"', '""')}"`;
const typed = (text: string) => `"${text.replaceAll('"', '\\"')}"`;

let studios = 0;

/** A new studio with two buckets, and how its keeper speaks. */
const setUp = async (app: App) => {
  studios += 1;
  const studio = await app.store.people.studioOf('discord', String(studios), 'Wrackline');
  const member = await app.store.people.memberOf(studio, 'terminal', 'me', 'me');
  let said = 0;
  const say = async (line: string, happened: Instant) => {
    const speaker = { studio, member, role: 'keeper' as const, now, happenedAt: happened };
    const reply = await speak(line, `key ${(said += 1)}`, speaker, app);
    expect(reply.kind).toBe('answer');
  };
  await say('/studio set zone:UTC', setUpAt);
  for (const name of ['Heron', 'Gull Grey'])
    await say(`/bucket add name:"${name}" pail:19l volume:15l`, setUpAt);
  return { studio, member, say };
};

/** A notebook of these rows, in the order in which they come. */
const notebook = (rows: readonly Row[]): string =>
  [
    'date,bucket,gravity,seconds,stirred,water,note',
    ...rows.map((one) =>
      [isoInstant(at(one)), one.bucket, one.gravity, one.seconds, one.stirred, one.water, one.note]
        .map(quoted)
        .join(','),
    ),
  ].join('\n');

/** What a studio’s buckets come to, whoever its one member is. */
const statesOf = async ({ store }: App, { studio, member }: Awaited<ReturnType<typeof setUp>>) => {
  const states = await store.books.read(studio, (book) => book.buckets());
  return JSON.parse(JSON.stringify(states).replaceAll(member, 'me')) as unknown;
};

it('a notebook in any order leaves the states that typing its lines one after another leaves', async () => {
  const file = storeFile();
  const app = await openApp({
    file,
    clock: { now: () => now },
    onBug: (error) => {
      throw error;
    },
  });
  await fc.assert(
    fc.asyncProperty(fc.uniqueArray(row, { minLength: 1, maxLength: 8, selector: at }), async (rows) => {
      const [brought, spoken] = [await setUp(app), await setUp(app)];
      for (const one of rows.toSorted((a, b) => at(a) - at(b))) {
        const reading = [
          `gravity:${one.gravity}`,
          ...(one.seconds === undefined ? [] : [`seconds:${one.seconds}`]),
          ...(one.stirred === undefined ? [] : [`stirred:${one.stirred}`]),
          ...(one.note === undefined ? [] : [`note:${typed(one.note)}`]),
        ];
        await spoken.say(`/reading bucket:"${one.bucket}" ${reading.join(' ')}`, at(one));
        if (one.water !== undefined)
          await spoken.say(`/added bucket:"${one.bucket}" what:water amount:"${one.water}"`, at(one));
      }
      const read = readTable(notebook(rows));
      const found = read.ok ? settleNotebook(read.table, { columns: new Map() }) : undefined;
      if (!read.ok || !found?.ok) throw new Error(JSON.stringify(found ?? read));
      const heard: string[] = [];
      const say = (text: string) => void heard.push(text);
      const { studio } = brought;
      const code = await importNotebook(
        app,
        { studio, as: 'me', table: read.table, settings: found.settings, newBuckets: false, dryRun: false },
        { say, refuse: say, progress: () => undefined, most: 9 },
      );
      expect({ code, heard }).toMatchObject({ code: 0 });
      expect(await statesOf(app, brought)).toEqual(await statesOf(app, spoken));
    }),
    { numRuns: 12 },
  );
  await app.store.close();
  expect(await checkStates(file)).toMatchObject({ outdated: 0, differing: [] });
});
