import { figureNames } from '../people/score.ts';
import type { Estimate, Summary } from './summary.ts';

const laidOut = (rows: readonly (readonly string[])[]): string => {
  const widths = (rows[0] ?? []).map((_, i) => Math.max(...rows.map((row) => (row[i] ?? '').length)));
  return rows
    .map((row) =>
      row
        .map((cell, i) => (i === 0 ? cell.padEnd(widths[i] ?? 0) : cell.padStart(widths[i] ?? 0)))
        .join('  '),
    )
    .join('\n');
};

const shown = (value: Estimate | undefined): string => {
  if (!value) return '-';
  const { mean, within } = value;
  return Number.isNaN(within) ? mean.toFixed(1) : `${mean.toFixed(1)} ± ${within.toFixed(1)}`;
};

/** What every decider made of one room. */
export const roomTable = (room: string, summaries: readonly Summary[]): string =>
  laidOut([
    [room, ...figureNames],
    ...summaries.map(({ decider, figures }) => [decider, ...figureNames.map((name) => shown(figures[name]))]),
  ]);

/** Where the minutes of a dip go. */
export const minutesTable = (room: string, summaries: readonly Summary[]): string => {
  const done = summaries[0]?.deeds.map(([deed]) => deed) ?? [];
  return laidOut([
    [`${room}, minutes`, ...done],
    ...summaries.map(({ decider, deeds }) => [decider, ...deeds.map(([, minutes]) => minutes.toFixed(2))]),
  ]);
};

const bands = [0, 0.5, 0.8, 0.9, 0.93, 0.97, 0.99, 1.000001] as const;

/** Of the times that so much was said, how often it was so; undefined of somebody who says no chance. */
export const calibrationTable = ({ decider, said }: Summary): string | undefined => {
  if (said.length === 0) return undefined;
  const rows = bands.slice(1).flatMap((high, i) => {
    const low = bands[i] ?? 0;
    const within = said.filter(({ chance }) => chance >= low && chance < high);
    if (within.length === 0) return [];
    const percent = (sum: number): string => ((100 * sum) / within.length).toFixed(1);
    return [
      [
        `${Math.round(100 * low)} to ${Math.round(100 * high)} %`,
        String(within.length),
        percent(within.reduce((sum, { chance }) => sum + chance, 0)),
        percent(within.filter((one) => one.true).length),
      ],
    ];
  });
  return laidOut([[`${decider} said`, 'times', 'said %', 'so %'], ...rows]);
};
