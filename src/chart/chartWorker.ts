import { parentPort } from 'node:worker_threads';
import { chartSvg } from './chartSvg.ts';
import type { ChartOrder, Drawn } from './drawn.ts';

const draw = async (order: ChartOrder): Promise<Uint8Array | string> => {
  if (order.as === 'svg') return chartSvg(order.chart, order.theme, order.size, order.pinnable);
  const { chartPng } = await import('./chartPng.ts');
  return chartPng(order.chart);
};

const drawn = (order: ChartOrder): Promise<Drawn> =>
  draw(order).then(
    (picture) => ({ picture }),
    (error: unknown) => ({ failed: error instanceof Error ? (error.stack ?? error.message) : String(error) }),
  );

parentPort?.on('message', ({ no, order }: { no: number; order: ChartOrder }) => {
  void drawn(order).then((answer) => parentPort?.postMessage({ no, drawn: answer }));
});
