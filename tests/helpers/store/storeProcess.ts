import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { fileURLToPath } from 'node:url';

export interface StoreProcess {
  readonly lines: readonly string[];
  /** The first line that matches, past or future; fails if the process ends without one. */
  line(is: (line: string) => boolean): Promise<string>;
  /** Kills the process without warning, like a power failure; resolves when it has ended. */
  kill(): Promise<void>;
  ended: Promise<number | null>;
}

const writer = fileURLToPath(new URL('./storeWriter.ts', import.meta.url));

export const startWriter = (file: string, mode: 'log' | 'hold' | 'once' | 'try'): StoreProcess => {
  const child = spawn(process.execPath, [writer, file, mode], { stdio: ['ignore', 'pipe', 'inherit'] });
  const lines: string[] = [];
  const watchers = new Set<() => void>();
  let rest = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    const parts = (rest + text).split('\n');
    rest = parts.pop() ?? '';
    lines.push(...parts);
    for (const watch of watchers) watch();
  });
  const ended = once(child, 'close').then(() => child.exitCode);
  return {
    lines,
    line: (is) =>
      new Promise((resolve, reject) => {
        const watch = () => {
          const found = lines.find(is);
          if (found === undefined) return;
          watchers.delete(watch);
          resolve(found);
        };
        watchers.add(watch);
        watch();
        void ended.then(() => reject(new Error(`It ended without that line; it said: ${lines.join(', ')}`)));
      }),
    kill: async () => {
      child.kill('SIGKILL');
      await ended;
    },
    ended,
  };
};
