import type { ChildProcess } from 'node:child_process';
import { once } from 'node:events';
import { request } from 'node:http';
import { expect, onTestFinished } from 'vitest';
import { runBuilt } from './runBuilt.ts';
import { storeFile } from './store/storeFile.ts';

export interface Program {
  child: ChildProcess;
  /** Everything that it printed. */
  said: string[];
  /** Its log alone. */
  log: string[];
  file: string;
  /** Where the room, and health and metrics, are offered. */
  roomPort(): Promise<number>;
  monitorPort(): Promise<number>;
}

/** The bundled program with a file of its own and free ports. */
export const runProgram = (env: Record<string, string> = {}, file = storeFile()): Program => {
  const { child, said } = runBuilt({ DATABASE_FILE: file, ROOM_PORT: '0', MONITOR_PORT: '0', ...env });
  const log: string[] = [];
  child.stderr?.on('data', (data) => log.push(String(data)));
  onTestFinished(async () => {
    if (child.exitCode !== null || child.signalCode !== null) return;
    child.kill('SIGKILL');
    await once(child, 'exit');
  });
  const portIn = async (words: RegExp): Promise<number> => {
    await expect.poll(() => said.join('')).toMatch(words);
    return Number(words.exec(said.join(''))?.[1]);
  };
  return {
    child,
    said,
    log,
    file,
    roomPort: () => portIn(/the room is at http:\/\/[^:]+:(\d+)/),
    monitorPort: () => portIn(/health and metrics at http:\/\/[^:]+:(\d+)/),
  };
};

export const ask = (
  port: number,
  path: string,
  { method = 'GET', headers = {} }: { method?: string; headers?: Record<string, string> } = {},
): Promise<{ status: number; type: string; text: string }> =>
  new Promise((resolve, reject) => {
    const sent = request({ host: '127.0.0.1', port, path, method, headers }, (got) => {
      let text = '';
      got.on('data', (data) => (text += String(data)));
      got.on('end', () =>
        resolve({ status: got.statusCode ?? 0, type: got.headers['content-type'] ?? '', text }),
      );
    });
    sent.on('error', reject);
    sent.end();
  });
