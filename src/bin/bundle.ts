import { rolldown, type InputOptions } from 'rolldown';

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

// The room's page as a phone loads it, and the program as it starts fastest: few files each.
await write(
  { input: ['src/room/page/main.ts', 'src/room/page/board.ts'], platform: 'browser' },
  'dist/page',
  true,
);
await write(
  {
    input: ['dist/src/main.js', 'dist/src/store/compactWorker.js'],
    platform: 'node',
    external,
    checks: { eval: false },
  },
  'dist/run',
  false,
);
