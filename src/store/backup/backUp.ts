import { existsSync } from 'node:fs';
import { extname } from 'node:path';
import { Worker } from 'node:worker_threads';
import { StoreProblem, type StoreProblemKind } from '../engine/storeProblem.ts';

/** The worker's answer. */
export type BackedUp = { ok: true } | { ok: false; kind: StoreProblemKind; detail: string };

/**
 * Copies a database into a new file, whether or not its owner is running. It may take minutes, so it runs in a thread
 * of its own.
 */
export const backUp = (file: string, target: string): Promise<void> =>
  new Promise((resolve, reject) => {
    if (existsSync(target)) throw new StoreProblem('exists', target, 'there is a file of that name already');
    // The worker beside this file, as source or bundled.
    const script = new URL(`./backUpWorker${extname(import.meta.url)}`, import.meta.url);
    const worker = new Worker(script, { workerData: { file, target } });
    worker.once('message', (answer: BackedUp) =>
      answer.ok ? resolve() : reject(new StoreProblem(answer.kind, file, answer.detail)),
    );
    worker.once('error', reject);
  });
