import { existsSync } from 'node:fs';
import { extname } from 'node:path';
import { Worker } from 'node:worker_threads';
import { StoreProblem, type StoreProblemKind } from '../engine/storeProblem.ts';

/** What the worker answers. */
export type BackedUp = { ok: true } | { ok: false; kind: StoreProblemKind; detail: string };

/** Copies a database, its owner running or not, into a new file. In a thread of its own: it may take minutes. */
export const backUp = (file: string, target: string): Promise<void> =>
  new Promise((resolve, reject) => {
    if (existsSync(target)) throw new StoreProblem('exists', target, 'there is a file of that name already');
    // The same module, as source or as bundled.
    const script = new URL(`./backUpWorker${extname(import.meta.url)}`, import.meta.url);
    const worker = new Worker(script, { workerData: { file, target } });
    worker.once('message', (answer: BackedUp) =>
      answer.ok ? resolve() : reject(new StoreProblem(answer.kind, file, answer.detail)),
    );
    worker.once('error', reject);
  });
