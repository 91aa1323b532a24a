import { existsSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { foldKeyModule } from '../generated/foldKeyNow.ts';
import { rolldown, type InputOptions } from 'rolldown';

/** Written last, so that a build that was cut short is done again. */
const stamp = 'dist/built';

const changedAt = (path: string): number => statSync(path).mtimeMs;

/** Whether anything that is bundled has changed since, or was taken away. */
const isCurrent = (): boolean => {
  if (!existsSync(stamp)) return false;
  const built = changedAt(stamp);
  const sources = ['src', 'commands'].flatMap((folder) => [
    folder,
    ...readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((name) => join(folder, name)),
  ]);
  return ['package-lock.json', ...sources].every((path) => changedAt(path) < built);
};

/** Native code, and what is loaded only when a chart is drawn or when it happens to be there. */
const external = [
  'better-sqlite3',
  '@resvg/resvg-js',
  '@observablehq/plot',
  'linkedom',
  'zlib-sync',
  'bufferutil',
  'utf-8-validate',
];

const write = async (options: InputOptions, dir: string, minify: boolean) => {
  const bundle = await rolldown({ ...options, logLevel: 'warn' });
  await bundle.write({ dir, minify, cleanDir: true, chunkFileNames: '[name].js' });
  await bundle.close();
};

const { values } = parseArgs({ options: { 'if-changed': { type: 'boolean', default: false } } });
if (!values['if-changed'] || !isCurrent()) {
  const key = 'src/store/states/foldKey.ts';
  // Left alone when it is right: the program's own folder may not be writable.
  if (readFileSync(key, 'utf8') !== foldKeyModule()) writeFileSync(key, foldKeyModule());
  // The room's page as a phone loads it, and the program as it starts fastest: few files each.
  await write(
    { input: ['src/room/page/main.ts', 'src/room/page/board.ts'], platform: 'browser' },
    'dist/page',
    true,
  );
  await write(
    {
      input: ['src/needsNode.js', 'src/start/main.ts', 'src/store/backup/compactWorker.ts'],
      platform: 'node',
      external,
      checks: { eval: false },
    },
    'dist/run',
    false,
  );
  writeFileSync(stamp, '');
}
