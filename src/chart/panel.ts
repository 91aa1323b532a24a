import * as Plot from '@observablehq/plot';
import { parseHTML } from 'linkedom';
import { localMilliseconds } from './localMilliseconds.ts';
import type { Chart } from '../contract/contract.ts';
import type { Theme } from './theme.ts';

type Series = Chart['series'][number];
type Span = [from: number, to: number];

export interface PanelSize {
  width: number;
  height: number;
}

/** The left margin, where the values of the scale stand. */
export const scaleWidth = 56;

/** Error bars for gravity, whose interval is known; filled circles for believed readings, hollow ones for others. */
export const panel = (
  series: Series,
  marks: Chart['marks'],
  zone: string,
  span: Span,
  theme: Theme,
  { width, height }: PanelSize,
): string => {
  const { document } = parseHTML('<!doctype html><html><body></body></html>');
  const at = (one: { at: Series['points'][number]['at'] }) => localMilliseconds(one.at, zone);
  const values = series.points.flatMap(({ value, u95 = 0 }) => [value - u95, value + u95]);
  const ends = [...values, ...(series.band ? [series.band.low, series.band.high] : [])];
  const [low, high] = [Math.min(...ends), Math.max(...ends)];
  const room = Math.max((high - low) * 0.08, series.unit === '' ? 0.005 : 0.5);
  const believed = series.points.filter((point) => point.believed);
  const svg = Plot.plot({
    document,
    width,
    height,
    marginLeft: scaleWidth,
    marginRight: 16,
    marginTop: 30,
    marginBottom: 34,
    style: { color: theme.ink, background: 'transparent', fontFamily: 'Inter', fontSize: '13px' },
    x: { type: 'utc', domain: span, ticks: Math.max(2, Math.floor(width / 130)), label: null },
    y: {
      domain: [low - room, high + room],
      ticks: 5,
      label: null,
      ...(series.unit === '' && { tickFormat: '.2f' }),
    },
    marks: [
      ...(series.band
        ? [
            Plot.rect([series.band], { x1: span[0], x2: span[1], y1: 'low', y2: 'high', fill: theme.band }),
            Plot.ruleY([series.band.low, series.band.high], { stroke: theme.faint, strokeDasharray: '2 4' }),
          ]
        : []),
      Plot.tickX(
        marks.filter(({ kind }) => kind === 'stir'),
        { x: at, y: null, stroke: theme.faint, strokeOpacity: 0.45, insetTop: height - 74 },
      ),
      Plot.dot(
        marks.filter(({ kind }) => kind !== 'stir'),
        {
          x: at,
          y: low - room,
          symbol: (mark: Chart['marks'][number]) => (mark.kind === 'addition' ? 'triangle' : 'square'),
          r: 4.5,
          fill: theme.ink,
          dy: -6,
        },
      ),
      Plot.line(believed, { x: at, y: 'value', stroke: theme.line, strokeWidth: 2 }),
      Plot.ruleX(
        series.points.filter(({ u95 }) => u95 !== undefined),
        {
          x: at,
          y1: ({ value, u95 = 0 }: Series['points'][number]) => value - u95,
          y2: ({ value, u95 = 0 }: Series['points'][number]) => value + u95,
          stroke: theme.line,
          strokeOpacity: 0.6,
        },
      ),
      Plot.dot(series.points, {
        x: at,
        y: 'value',
        r: 4.5,
        stroke: theme.line,
        strokeWidth: 2,
        fill: ({ believed: filled }: Series['points'][number]) => (filled ? theme.line : theme.paper),
      }),
    ],
  });
  return svg.outerHTML;
};
