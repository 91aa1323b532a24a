import { writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import * as Plot from '@observablehq/plot';
import { Resvg } from '@resvg/resvg-js';
import { parseHTML } from 'linkedom';
import { light } from '../../../../src/chart/theme.ts';
import type { Summary } from './summary.ts';

interface Point {
  room: string;
  decider: string;
  minutes: number;
  right: number;
  within: number;
}

const points = (summaries: readonly Summary[]): Point[] =>
  summaries.flatMap(({ room, decider, figures }) => {
    const [right, minutes] = [figures['right %'], figures.minutes];
    if (!right || !minutes) return [];
    const within = Number.isNaN(right.within) ? 0 : right.within;
    return [{ room, decider, minutes: minutes.mean, right: right.mean, within }];
  });

/** The quickest first. */
const inTurn = (all: readonly Point[]): Point[] => all.toSorted((a, b) => a.minutes - b.minutes);

/** Those that nobody beats in less time, in turn. */
const best = (all: readonly Point[]): Point[] =>
  inTurn(all).filter((one) => !all.some((other) => other.minutes <= one.minutes && other.right > one.right));

const perRow = 3;

/** Rights against minutes, a panel for each room; the line joins those that nobody beats in less time. */
export const frontierSvg = (summaries: readonly Summary[]): string => {
  const all = points(summaries);
  const rooms = [...new Set(all.map(({ room }) => room))];
  const rows = Math.ceil(rooms.length / perRow);
  const panel = {
    fx: ({ room }: { room: string }) => rooms.indexOf(room) % perRow,
    fy: ({ room }: { room: string }) => Math.floor(rooms.indexOf(room) / perRow),
  };
  const { document } = parseHTML('<!doctype html><html><body></body></html>');
  const svg = Plot.plot({
    document,
    width: 40 + 360 * Math.min(perRow, rooms.length),
    height: 60 + 300 * rows,
    marginLeft: 48,
    marginBottom: 40,
    style: { color: light.ink, background: light.paper, fontFamily: 'Inter', fontSize: '12px' },
    x: { domain: [0, Math.ceil(Math.max(...all.map(({ minutes }) => minutes)) + 1)], label: 'minutes a dip' },
    y: { domain: [0, 110], ticks: [0, 20, 40, 60, 80, 100], label: 'dips right, %', grid: true },
    fx: { axis: null, padding: 0.08 },
    fy: { axis: null, padding: 0.12 },
    marks: [
      Plot.frame({ stroke: light.faint }),
      Plot.text(
        rooms.map((room) => ({ room })),
        { ...panel, text: 'room', frameAnchor: 'top', lineAnchor: 'bottom', dy: -6, fontSize: 14 },
      ),
      Plot.line(
        rooms.flatMap((room) => best(all.filter((one) => one.room === room))),
        { ...panel, x: 'minutes', y: 'right', z: 'room', stroke: light.line, strokeOpacity: 0.5 },
      ),
      Plot.ruleX(all, {
        ...panel,
        x: 'minutes',
        y1: ({ right, within }: Point) => right - within,
        y2: ({ right, within }: Point) => right + within,
        stroke: light.faint,
      }),
      Plot.dot(all, {
        ...panel,
        x: 'minutes',
        y: 'right',
        r: 4,
        stroke: light.line,
        fill: ({ decider }: Point) => (decider === 'bot' ? light.line : light.paper),
      }),
      // Neighbours are named above and below in turn.
      ...[14, -14].map((dy, turn) =>
        Plot.text(
          rooms.flatMap((room) =>
            inTurn(all.filter((one) => one.room === room)).filter((_, i) => i % 2 === turn),
          ),
          { ...panel, x: 'minutes', y: 'right', text: 'decider', dy },
        ),
      ),
    ],
  });
  return svg.outerHTML.replace(/^<svg /, '<svg xmlns="http://www.w3.org/2000/svg" ');
};

/** Into a file that ends in .svg or .png. */
export const drawFrontier = (summaries: readonly Summary[], file: string): void => {
  const svg = frontierSvg(summaries);
  if (!file.endsWith('.png')) return writeFileSync(file, svg);
  const font = fileURLToPath(import.meta.resolve('#chart/Inter_400Regular.ttf'));
  const drawn = new Resvg(svg, {
    background: light.paper,
    font: { fontFiles: [font], loadSystemFonts: false, defaultFontFamily: 'Inter' },
    fitTo: { mode: 'zoom', value: 2 },
  });
  writeFileSync(file, drawn.render().asPng());
};
