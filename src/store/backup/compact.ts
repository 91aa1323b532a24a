import { extname } from 'node:path';
import { Worker } from 'node:worker_threads';

/** The module beside this one, as source or as bundled. */
const script = new URL(`./compactWorker${extname(import.meta.url)}`, import.meta.url);

/**
 * Takes what was deleted out of the file's very bytes. In a thread of its own: it may take a while. False when somebody
 * was reading an older state, so that it must be tried again.
 */
export const compact = (file: string): Promise<boolean> =>
  new Promise((resolve, reject) => {
    const worker = new Worker(script, { workerData: { file } });
    worker.once('message', (emptied) => resolve(emptied === true));
    worker.once('error', reject);
    worker.once('exit', () => resolve(false));
  });
