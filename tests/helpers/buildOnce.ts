import { execFileSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';

/** Builds the program once before all tests, as `npm start` does: test files that built it side by side would pull it from under each other. */
export const setup = (): void =>
  void execFileSync('npm', ['run', '-s', 'build'], {
    cwd: fileURLToPath(new URL('../..', import.meta.url)),
    stdio: ['ignore', 'ignore', 'inherit'],
  });
