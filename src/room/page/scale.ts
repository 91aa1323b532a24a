import { windowScale } from '../../windowScale.ts';
import { svg } from './browser/dom.ts';

const width = 200;

interface Marked {
  mark: { value: number; u95: number; believed: boolean } | null;
  window: { low: number; high: number };
}

/** A scale: the window is the dip in the middle, and the mark is the last reading. Without a label it is decoration. */
export const markedScale = ({ mark: measured, window }: Marked, label?: string): SVGElement => {
  const place = windowScale(window);
  const x = (value: number) => Math.min(width - 6, Math.max(6, place(value) * width));
  const mark = (value: number, believed: boolean, u95: number) => [
    svg('line', { class: 'within', x1: x(value - u95), x2: x(value + u95), y1: 20, y2: 20 }),
    svg('circle', { class: believed ? 'mark' : 'mark hollow', cx: x(value), cy: 20, r: 8 }),
  ];
  return svg(
    'svg',
    {
      class: 'scale',
      viewBox: `0 0 ${width} 40`,
      ...(label === undefined ? { 'aria-hidden': 'true' } : { role: 'img', 'aria-label': label }),
    },
    svg('rect', { class: 'trough', x: 0, y: 15, width, height: 10, rx: 5 }),
    svg('rect', {
      class: 'window',
      x: x(window.low),
      y: 8,
      width: x(window.high) - x(window.low),
      height: 24,
      rx: 5,
    }),
    ...(measured ? mark(measured.value, measured.believed, measured.u95) : []),
  );
};
