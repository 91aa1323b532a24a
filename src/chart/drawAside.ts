import { extname } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { Chart } from '../contract/contract.ts';
import type { ChartSize } from './chartSvg.ts';
import type { ChartOrder, Drawn } from './drawn.ts';
import type { Theme } from './theme.ts';

/** The worker beside this file, as source or bundled. */
const script = new URL(`./chartWorker${extname(import.meta.url)}`, import.meta.url);

/** Milliseconds. What draws charts takes 40 MB of memory, and charts come rarely. */
const endsAfter = 60_000;

interface Waiting {
  resolve(picture: Uint8Array | string): void;
  reject(why: unknown): void;
}

/** Draws charts in a thread of its own, so that nobody else waits. It starts with the first chart and ends after a pause. */
class DrawingThread {
  #worker: Worker | undefined;
  readonly #waiting = new Map<number, Waiting>();
  #last = 0;
  #ending: NodeJS.Timeout | undefined;

  draw(order: ChartOrder): Promise<Uint8Array | string> {
    return new Promise((resolve, reject) => {
      const no = (this.#last += 1);
      clearTimeout(this.#ending);
      this.#worker ??= this.#started();
      this.#worker.ref();
      this.#worker.postMessage({ no, order });
      this.#waiting.set(no, { resolve, reject });
    });
  }

  #started(): Worker {
    const worker = new Worker(script);
    worker.on('message', ({ no, drawn }: { no: number; drawn: Drawn }) => {
      const drawing = this.#waiting.get(no);
      this.#waiting.delete(no);
      if ('picture' in drawn) drawing?.resolve(drawn.picture);
      else drawing?.reject(new Error(drawn.failed));
      if (this.#waiting.size === 0) this.#endLater(worker);
    });
    worker.on('error', (error) => this.#ended(worker, error));
    worker.on('exit', () => this.#ended(worker, new Error('the thread that draws charts ended')));
    return worker;
  }

  #endLater(worker: Worker): void {
    worker.unref();
    this.#ending = setTimeout(() => {
      this.#worker = undefined;
      void worker.terminate();
    }, endsAfter).unref();
  }

  /** Rejects what waited for the thread; the next chart starts another. */
  #ended(worker: Worker, why: unknown): void {
    if (this.#worker !== worker) return;
    this.#worker = undefined;
    for (const { reject } of this.#waiting.values()) reject(why);
    this.#waiting.clear();
  }
}

const thread = new DrawingThread();

/** As `chartPng`, drawn in another thread. Rejects when it cannot be drawn. */
export const drawPng = async (chart: Chart): Promise<Uint8Array> => {
  const picture = await thread.draw({ as: 'png', chart });
  if (typeof picture === 'string') throw new Error('a picture was asked for and a text came');
  return picture;
};

/** As `chartSvg`, drawn in another thread. Rejects when it cannot be drawn. */
export const drawSvg = async (
  chart: Chart,
  theme: Theme,
  size: ChartSize,
  pinnable: boolean,
): Promise<string> => {
  const picture = await thread.draw({ as: 'svg', chart, theme, size, pinnable });
  if (typeof picture !== 'string') throw new Error('a text was asked for and a picture came');
  return picture;
};
