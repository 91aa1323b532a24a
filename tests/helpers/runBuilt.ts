import { spawn, type ChildProcess } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** Starts the bundled program in its own process, without this machine's settings. */
export const runBuilt = (env: Record<string, string>): { child: ChildProcess; said: string[] } => {
  const child = spawn(process.execPath, [`${root}dist/run/main.js`], {
    cwd: root,
    stdio: ['ignore', 'pipe', 'pipe'],
    env: { PATH: process.env['PATH'], TZ: 'UTC', MONITOR_PORT: 'off', ...env },
  });
  const said: string[] = [];
  for (const stream of [child.stdout, child.stderr]) stream?.on('data', (data) => said.push(String(data)));
  return { child, said };
};
