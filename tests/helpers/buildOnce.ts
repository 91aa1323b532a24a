import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** Bundles the program once before all tests: parallel builds would delete one another's files. */
export const setup = (): void =>
  void execFileSync(process.execPath, ['src/bin/bundle.ts'], {
    cwd: fileURLToPath(new URL('../..', import.meta.url)),
    stdio: ['ignore', 'ignore', 'inherit'],
  });
