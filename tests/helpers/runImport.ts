import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';

const source = (file: string) => fileURLToPath(new URL(`../../src/${file}`, import.meta.url));

/** Runs `npm run import` on a logbook, without this machine's settings and without a terminal. */
export const runImport = (
  logbook: string,
  args: readonly string[],
): Promise<{ code: number | null; stdout: string; stderr: string }> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [source('run.js'), source('bin/import.ts'), ...args], {
      stdio: ['ignore', 'pipe', 'pipe'],
      env: { PATH: process.env['PATH'] ?? '', TZ: 'UTC', DATABASE_FILE: logbook },
    });
    const heard = { stdout: '', stderr: '' };
    child.stdout.setEncoding('utf8').on('data', (text: string) => (heard.stdout += text));
    child.stderr.setEncoding('utf8').on('data', (text: string) => (heard.stderr += text));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, ...heard }));
  });
