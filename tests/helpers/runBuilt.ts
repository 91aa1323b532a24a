import { execFileSync, spawn } from 'node:child_process';
import type { ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Compiles the program. */
export const build = (): void => void execFileSync('npm', ['run', '-s', 'build'], { cwd: root });

/** Builds and bundles it, as `npm start` does; the bundle is `../run/main.js`. */
export const bundle = (): void => void execFileSync('npm', ['run', '-s', 'bundle'], { cwd: root });

/** Starts a built program in a process of its own, away from this machine's settings. */
export const runBuilt = (
  program: string,
  env: Record<string, string>,
): { child: ChildProcess; said: string[] } => {
  const child = spawn(process.execPath, [`${root}dist/src/${program}`], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { PATH: process.env['PATH'], TZ: 'UTC', ...env },
  });
  const said: string[] = [];
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (data) => said.push(String(data)));
  return { child, said };
};
