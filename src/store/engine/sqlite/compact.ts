import { extname } from 'node:path';
import { Worker } from 'node:worker_threads';

/** The worker beside this file, as source or bundled. */
const script = new URL(`./compactWorker${extname(import.meta.url)}`, import.meta.url);

/**
 * Rewrites the file so that no deleted data stays in it. It may take a while, so it runs in a thread of its own.
 * False when somebody was reading an older state and it has to be tried again.
 */
export const compact = (file: string): Promise<boolean> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(script, { workerData: { file } });
    worker.once('message', (emptied) => resolve(emptied === true));
    worker.once('error', reject);
    worker.once('exit', () => resolve(false));
  });
