import type { Chart } from '../contract/contract.ts';
import { localMilliseconds } from './localMilliseconds.ts';
import { panel, scaleWidth } from './panel.ts';
import { stripsSvg } from './stripsSvg.ts';
import { svgText, wrappedLines, escaped } from './svgText.ts';
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

/** Where the title, the panels' names and their scales stand: that much stays in sight while the rest scrolls. */
const margin = (head: number, panels: number, { panelHeight }: ChartSize): string =>
  [
    [400, head, 0],
    [scaleWidth, head + panels * panelHeight, 0],
    ...Array.from({ length: panels }, (_, i) => [220, 22, head + i * panelHeight]),
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
  const { width, panelHeight } = size;
  const head = 44;
  const key = wrappedLines(chart.key, width / 6.6);
  const foot = 14 + 16 * key.length;
  const height = head + chart.series.length * panelHeight + foot;
  const span = spanOf(chart);
  const shown = chart.marks.filter(({ at }) => localMilliseconds(at, chart.zone) >= span[0]);
  const panels = chart.series.map((series, i) =>
    nested(
      panel(series, shown, chart.zone, span, theme, { width, height: panelHeight }),
      head + i * panelHeight,
      size,
    ),
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}" height="${height}" viewBox="0 0 ${width} ${height}" role="img" aria-label="${escaped(chart.alt)}">`,
    `<title>${escaped(chart.alt)}</title>`,
    pinnable
      ? `<style>#margin:target~g{clip-path:url(#clip)}</style><clipPath id="clip">${margin(head, chart.series.length, size)}</clipPath><g id="margin"/><g>`
      : '',
    `<rect width="${width}" height="${height}" fill="${theme.paper}"/>`,
    svgText(16, 28, 18, theme.ink, chart.title),
    ...panels,
    ...chart.series.map(({ label, unit }, i) =>
      svgText(16, head + i * panelHeight + 14, 13, theme.ink, unit === '' ? label : `${label} (${unit})`),
    ),
    ...key.map((line, i) => svgText(16, height - 10 - 16 * (key.length - 1 - i), 12, theme.faint, line)),
    pinnable ? '</g></svg>' : '</svg>',
  ].join('');
};
