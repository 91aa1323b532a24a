import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { systemClock } from '../../src/clock.ts';
import { speak } from '../../src/desk/speak.ts';
import { settleNotebook } from '../../src/notebook/notebookSettings.ts';
import { exportJson } from '../../src/replies/export/exportJson.ts';
import { openApp } from '../../src/start/app.ts';
import { importExport } from '../../src/start/imports/importExport.ts';
import { importNotebook, readNotebook } from '../../src/start/importNotebook.ts';

/** How long it takes to bring in a notebook, to take it back, and to bring in the export of it. */
const lines = Number(process.argv.find((word) => /^\d+$/.test(word)) ?? 100_000);
const pails = 40;

/** Ten years of a busy glaze room: two readings of three lines, water after the third. */
const notebook = (): string => {
  const start = Date.UTC(2015, 0, 1, 8);
  const step = (10 * 365 * 86_400_000) / lines;
  const rows = Array.from({ length: lines }, (_, i) => {
    const at = new Date(start + i * step).toISOString().slice(0, 16);
    const pail = `Bucket ${i % pails}`;
    return i % 3 < 2
      ? `${at},${pail},${(1.4 + ((i * 7) % 13) / 100).toFixed(2)},${12 + ((i * 5) % 9)},,`
      : `${at},${pail},,,${100 + ((i * 11) % 400)},after the last dip`;
  });
  return ['date,bucket,gravity,seconds,water ml,note', ...rows].join('\n');
};

const folder = mkdtempSync(join(tmpdir(), 'bench-import-'));
const app = await openApp({ file: join(folder, 'studio.db'), clock: systemClock, onBug: console.error });
const { store } = app;
const seconds = async <T>(what: string, aim: string, work: () => Promise<T>): Promise<T> => {
  const began = performance.now();
  const done = await work();
  console.log(`${what}: ${((performance.now() - began) / 1000).toFixed(1)} s${aim}`);
  return done;
};

try {
  const studio = await store.people.studioOf('terminal', 'here', 'bench');
  const member = await store.people.memberOf(studio, 'terminal', 'me', 'me');
  const keeper = { studio, member, role: 'keeper' as const, now: systemClock.now() };
  await speak('/studio set zone:America/St_Johns', 'zone', keeper, app);
  const csv = join(folder, 'notebook.csv');
  writeFileSync(csv, notebook());
  await seconds(`${lines} lines of a notebook, with ${pails} new buckets`, ' (aim: under 60 s)', async () => {
    const read = readNotebook(csv, {});
    const found = read.ok ? settleNotebook(read.table, { columns: new Map() }) : undefined;
    if (!read.ok || !found?.ok) throw new Error(JSON.stringify(found ?? read));
    const quiet = { say: console.log, refuse: console.error, progress: () => undefined, most: 5 };
    const options = { studio, as: 'me', table: read.table, settings: found.settings };
    return importNotebook(app, { ...options, newBuckets: true, dryRun: false }, quiet);
  });
  const json = join(folder, 'all.json');
  const texts: string[] = [];
  await store.books.readSnapshot(studio, async (book) => {
    for await (const { text } of exportJson(book, systemClock.now(), {})) texts.push(text);
  });
  writeFileSync(json, texts.join(''));
  await seconds('its export as a new studio', '', () =>
    importExport(json, app, { name: 'again', anew: false }),
  );
  await seconds('taking the notebook back', '', () => store.imports.takeBack(studio, 1, member));
  console.log(`at most ${Math.round(process.resourceUsage().maxRSS / 1024)} MB of memory`);
} finally {
  await store.close();
  rmSync(folder, { recursive: true, force: true });
}
