import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { isAddress } from '../../src/store/engine/isAddress.ts';

const source = (file: string) => fileURLToPath(new URL(`../../src/${file}`, import.meta.url));

/** Runs one of the operator’s programs on a file or a database, without this machine's settings. */
export const runBin = (
  program: string,
  where: string,
  { args = [], input = '' }: { args?: readonly string[]; input?: string } = {},
): Promise<{ code: number | null; stdout: string; stderr: string }> =>
  new Promise((resolve, reject) => {
    const logbook = isAddress(where) ? { DATABASE_URL: where } : { DATABASE_FILE: where };
    const child = spawn(process.execPath, [source('run.js'), source(`bin/${program}.ts`), ...args], {
      env: { PATH: process.env['PATH'] ?? '', TZ: 'UTC', ...logbook },
    });
    const heard = { stdout: '', stderr: '' };
    child.stdout.setEncoding('utf8').on('data', (text: string) => (heard.stdout += text));
    child.stderr.setEncoding('utf8').on('data', (text: string) => (heard.stderr += text));
    child.on('error', reject);
    child.on('close', (code) => resolve({ code, ...heard }));
    child.stdin.on('error', () => undefined).end(input);
  });
