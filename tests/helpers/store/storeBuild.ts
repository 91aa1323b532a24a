import { execFileSync } from 'node:child_process';
import { chmodSync, cpSync, mkdtempSync, symlinkSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../../..', import.meta.url));

/** Compiles files and what they import, to run them as processes; answers the folder. */
export const buildFiles = (files: readonly string[]): string => {
  const folder = mkdtempSync(join(tmpdir(), 'glaze-build-'));
  // Also for a process that runs as somebody else.
  chmodSync(folder, 0o755);
  symlinkSync(join(root, 'node_modules'), join(folder, 'node_modules'));
  cpSync(join(root, 'package.json'), join(folder, 'package.json'));
  const config = join(folder, 'tsconfig.json');
  const compilerOptions = {
    noEmit: false,
    noCheck: true,
    rootDir: root,
    outDir: join(folder, 'out'),
    typeRoots: [join(root, 'node_modules/@types')],
  };
  writeFileSync(
    config,
    JSON.stringify({
      extends: join(root, 'tsconfig.json'),
      compilerOptions,
      include: [],
      files: files.map((file) => join(root, file)),
    }),
  );
  execFileSync(process.execPath, [join(root, 'node_modules/typescript/bin/tsc'), '-p', config]);
  return join(folder, 'out');
};

/** Compiles the store, its commands and the test's own writer. */
export const buildStore = (): string =>
  buildFiles([
    'src/bin/rebuild.ts',
    'src/bin/backup.ts',
    'src/store/backup/backUpWorker.ts',
    'tests/helpers/store/storeWriter.ts',
  ]);
