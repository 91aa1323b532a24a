import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** Bundles the program and its page once before all tests: test files that did so side by side would pull them from under each other. */
export const setup = (): void =>
  void execFileSync(process.execPath, ['src/bin/bundle.ts'], {
    cwd: fileURLToPath(new URL('../..', import.meta.url)),
    stdio: ['ignore', 'ignore', 'inherit'],
  });
