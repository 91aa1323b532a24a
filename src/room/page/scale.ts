import { windowScale } from '../../windowScale.ts';
import type { WireBucket } from '../wire.ts';
import { svg } from './dom.ts';

const width = 200;

/** A gravity scale: the window is the dip in the middle, and the mark is the last reading. */
export const gravityScale = (
  { gravity, window }: Pick<WireBucket, 'gravity' | 'window'>,
  label: string,
): SVGElement | undefined => {
  if (!window) return undefined;
  const place = windowScale(window);
  const x = (value: number) => Math.min(width - 6, Math.max(6, place(value) * width));
  const mark = (value: number, believed: boolean, u95: number) => [
    svg('line', { class: 'within', x1: x(value - u95), x2: x(value + u95), y1: 20, y2: 20 }),
    svg('circle', { class: believed ? 'mark' : 'mark hollow', cx: x(value), cy: 20, r: 8 }),
  ];
  return svg(
    'svg',
    { class: 'scale', viewBox: `0 0 ${width} 40`, role: 'img', 'aria-label': label },
    svg('rect', { class: 'trough', x: 0, y: 15, width, height: 10, rx: 5 }),
    svg('rect', {
      class: 'window',
      x: x(window.low),
      y: 8,
      width: x(window.high) - x(window.low),
      height: 24,
      rx: 5,
    }),
    ...(gravity ? mark(gravity.value, gravity.believed, gravity.u95) : []),
  );
};
