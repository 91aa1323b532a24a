import type { Chart } from '../contract/contract.ts';
import { localMilliseconds } from './localMilliseconds.ts';
import { framed, head, svgText } from './svgText.ts';
import type { Theme } from './theme.ts';

type Series = Chart['series'][number];

const margin = 16;
/** A strip's name stands above its line. */
const nameHeight = 20;
const lineHeight = 26;
const rowHeight = nameHeight + lineHeight + 8;
/** So many strips or more stand in two columns where there is room for them. */
const many = 9;
const wide = 640;
const day = 86_400_000;

/** A name and a note that fit beside each other: letters are about half as wide as they are high. */
const clipped = (words: string, width: number): string => {
  const most = Math.max(3, Math.floor(width / 7));
  return words.length > most ? `${words.slice(0, most - 1)}…` : words;
};

interface Place {
  x: number;
  y: number;
  width: number;
  /** The first and last moment, on the studio's wall clock. */
  span: readonly [number, number];
  zone: string;
}

const strip = ({ label, band, points, note = '' }: Series, place: Place, theme: Theme): string => {
  const { x, y, width, span, zone } = place;
  const top = y + nameHeight;
  const ends = [...points.map(({ value }) => value), ...(band ? [band.low, band.high] : [])];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const room = Math.max((high - low) * 0.12, 0.004);
  const across = (at: Series['points'][number]['at']): number =>
    x + (width * (localMilliseconds(at, zone) - span[0])) / (span[1] - span[0]);
  const down = (value: number): number =>
    top + (lineHeight * (high + room - value)) / (high - low + 2 * room);
  const to = (value: number): string => value.toFixed(1);
  const believed = points.filter((point) => point.believed);
  const line = believed.map(({ at, value }) => `${to(across(at))},${to(down(value))}`).join(' ');
  return [
    svgText(x, y + 13, 13, theme.ink, clipped(label, width * 0.55)),
    svgText(x + width, y + 13, 12, theme.faint, clipped(note, width * 0.45), 'end'),
    `<rect x="${x}" y="${top}" width="${width}" height="${lineHeight}" fill="none" stroke="${theme.faint}" stroke-opacity="0.35"/>`,
    band
      ? `<rect x="${x}" y="${to(down(band.high))}" width="${width}" height="${to(down(band.low) - down(band.high))}" fill="${theme.band}"/>`
      : '',
    believed.length > 1
      ? `<polyline points="${line}" fill="none" stroke="${theme.line}" stroke-width="1.5"/>`
      : '',
    ...points.map(
      ({ at, value, believed: counts }) =>
        `<circle cx="${to(across(at))}" cy="${to(down(value))}" r="2.6" stroke="${theme.line}" stroke-width="1.4" fill="${counts ? theme.line : theme.paper}"/>`,
    ),
  ].join('');
};

/** Midnights of the studio's clock within the span. */
const midnights = ([from, until]: readonly [number, number]): number[] =>
  Array.from(
    { length: Math.floor(until / day) - Math.floor(from / day) },
    (_, i) => (Math.floor(from / day) + 1 + i) * day,
  );

/** A strip for each series: its name, what is said of it, its window and its readings. */
export const stripsSvg = (
  chart: Chart,
  { from, until }: NonNullable<Chart['strips']>,
  theme: Theme,
  width: number,
): string => {
  const { series, zone } = chart;
  const columns = series.length >= many && width >= wide ? 2 : 1;
  const rows = Math.ceil(series.length / columns);
  const gap = 24;
  const stripWidth = (width - 2 * margin - gap * (columns - 1)) / columns;
  const span = [localMilliseconds(from, zone), localMilliseconds(until, zone)] as const;
  const nights = Array.from({ length: columns }, (_, column) =>
    midnights(span)
      .map((at) => margin + column * (stripWidth + gap) + (stripWidth * (at - span[0])) / (span[1] - span[0]))
      .map(
        (x) =>
          `<line x1="${x.toFixed(1)}" x2="${x.toFixed(1)}" y1="${head}" y2="${head + rows * rowHeight - 8}" stroke="${theme.faint}" stroke-opacity="0.18"/>`,
      ),
  ).flat();
  const strips = series.map((one, i) => {
    const x = margin + Math.floor(i / rows) * (stripWidth + gap);
    const y = head + (i % rows) * rowHeight;
    return strip(one, { x, y, width: stripWidth, span, zone }, theme);
  });
  return framed(chart, theme, { width, bottom: head + rows * rowHeight }, [...nights, ...strips]);
};
