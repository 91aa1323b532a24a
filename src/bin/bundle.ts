import { existsSync, readFileSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { parseArgs } from 'node:util';
import { foldKeyModule } from '../generated/foldKeyNow.ts';
import { type BuildOptions, build } from 'esbuild';

/** Written last, so that an interrupted build is done again. */
const stamp = 'dist/built';

const changedAt = (path: string): number => statSync(path).mtimeMs;

/** Whether no bundled source has changed or been removed since the last build. */
const isCurrent = (): boolean => {
  if (!existsSync(stamp)) return false;
  const built = changedAt(stamp);
  const sources = ['src', 'commands'].flatMap((folder) => [
    folder,
    ...readdirSync(folder, { recursive: true, encoding: 'utf8' }).map((name) => join(folder, name)),
  ]);
  return ['package-lock.json', ...sources].every((path) => changedAt(path) < built);
};

/** Not bundled: native code, what only a chart needs, and optional packages. */
const external = [
  'better-sqlite3',
  'pg',
  '@resvg/resvg-js',
  '@observablehq/plot',
  'linkedom',
  'zlib-sync',
  'bufferutil',
  'utf-8-validate',
];

const bundle = async (dir: string, options: BuildOptions) => {
  rmSync(dir, { recursive: true, force: true });
  const shared: BuildOptions = { bundle: true, splitting: true, format: 'esm', target: 'es2022' };
  await build({ ...shared, ...options, outdir: dir, logLevel: 'warning' });
};

const { values } = parseArgs({ options: { 'if-changed': { type: 'boolean', default: false } } });
if (!values['if-changed'] || !isCurrent()) {
  const key = 'src/store/states/foldKey.ts';
  // Skipped when it is correct already: the program's folder may be read-only.
  if (readFileSync(key, 'utf8') !== foldKeyModule()) writeFileSync(key, foldKeyModule());
  // The room's page for browsers, and the program: few files each, for a fast start.
  await bundle('dist/page', {
    entryPoints: ['src/room/page/main.ts', 'src/room/page/board.ts'],
    minify: true,
  });
  await bundle('dist/run', {
    entryPoints: { main: 'src/start/start.js', chartWorker: 'src/chart/chartWorker.ts' },
    platform: 'node',
    define: { 'process.env.NODE_ENV': '"production"' },
    external,
    // The engine holds the text in memory, twice as large with a single character that is not Latin. Names stay, for
    // stack traces; licences lie in node_modules.
    minifyWhitespace: true,
    minifySyntax: true,
    legalComments: 'none',
    // Bundled CommonJS packages call `require`, which an ES module has to create.
    banner: {
      js: "import { createRequire as requireFrom } from 'node:module';\nconst require = requireFrom(import.meta.url);",
    },
  });
  writeFileSync(stamp, '');
}
