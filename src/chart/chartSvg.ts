import type { Chart } from '../contract/contract.ts';
import { localMilliseconds } from './localMilliseconds.ts';
import { panel, scaleWidth } from './panel.ts';
import { stripsSvg } from './stripsSvg.ts';
import { framed, head, svgText } from './svgText.ts';
import { light, type Theme } from './theme.ts';

export interface ChartSize {
  width: number;
  panelHeight: number;
}

const hour = 3_600_000;

/** From the first point to the last, with a margin; never a span of zero. */
const spanOf = ({ series, marks, zone }: Chart): [number, number] => {
  const points = series.flatMap((one) => one.points.map(({ at }) => localMilliseconds(at, zone)));
  const first = Math.min(...points);
  const last = Math.max(...points, ...marks.map(({ at }) => localMilliseconds(at, zone)));
  const room = Math.max((last - first) * 0.03, 2 * hour);
  return [first - room, last + room];
};

const nested = (svg: string, y: number, { width, panelHeight }: ChartSize): string =>
  svg
    .replace(/^<svg /, `<svg xmlns="http://www.w3.org/2000/svg" x="0" y="${y}" `)
    .replace(/width="[^"]*"/, `width="${width}"`)
    .replace(/height="[^"]*"/, `height="${panelHeight}"`);

/** The title and the key take no more than this where they stay in sight. */
const pinnedWidth = 400;

/**
 * Where the title, the panels' names, their scales and the key stand: that much stays in sight while the rest scrolls.
 * Dates do not: they take the lowest 27 of a panel, and their letters reach 4 below it.
 */
const margin = (panels: number, { panelHeight }: ChartSize): string =>
  [
    [pinnedWidth, head, 0],
    ...Array.from({ length: panels }, (_, i) => head + i * panelHeight).flatMap((y) => [
      [220, 22, y],
      [scaleWidth, panelHeight - 27, y],
    ]),
    [pinnedWidth, 100, head + panels * panelHeight + 4],
  ]
    .map(([width, height, y]) => `<rect x="0" y="${y}" width="${width}" height="${height}"/>`)
    .join('');

/**
 * A chart as SVG: one panel for each quantity, the window as a band, stirs as strokes, additions as triangles. One that
 * is pinnable shows its margin alone at the address `#margin`, without being drawn again.
 */
export const chartSvg = (
  chart: Chart,
  theme: Theme = light,
  size: ChartSize = { width: 720, panelHeight: 240 },
  pinnable = false,
): string => {
  if (chart.strips) return stripsSvg(chart, chart.strips, theme, size.width);
  const { series, zone } = chart;
  const { width, panelHeight } = size;
  const bottom = head + series.length * panelHeight;
  const span = spanOf(chart);
  const shown = chart.marks.filter(({ at }) => localMilliseconds(at, zone) >= span[0]);
  const panels = series.map((one, i) => {
    const drawn = panel(one, shown, zone, span, theme, { width, height: panelHeight });
    return nested(drawn, head + i * panelHeight, size);
  });
  const labels = series.map(({ label, unit }, i) =>
    svgText(16, head + i * panelHeight + 14, 13, theme.ink, unit === '' ? label : `${label} (${unit})`),
  );
  const clip = pinnable
    ? `<style>#margin:target~g{clip-path:url(#clip)}</style><clipPath id="clip">${margin(series.length, size)}</clipPath><g id="margin"/>`
    : '';
  return framed(
    chart,
    theme,
    { width, bottom, keyWidth: pinnable ? pinnedWidth : width },
    [...panels, ...labels],
    clip,
  );
};
