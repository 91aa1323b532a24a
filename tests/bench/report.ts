import { writeFileSync } from 'node:fs';
import { cpus } from 'node:os';
import { median, percentile } from './load.ts';

interface Pairs {
  unit: string;
  aim: string;
  ours: number[];
  floor: number[];
}

/** Measurements of our bot and the minimal one, taken alternately, so that a slow machine affects both. */
export class Report {
  readonly #pairs = new Map<string, Pairs>();
  readonly #pools = new Map<string, { ours: number[]; floor: number[] }>();

  add(what: string, unit: string, ours: number, floor: number, aim: string): void {
    const pairs = this.#pairs.get(what) ?? { unit, aim, ours: [], floor: [] };
    pairs.ours.push(ours);
    pairs.floor.push(floor);
    this.#pairs.set(what, pairs);
  }

  pool(what: string, whose: 'ours' | 'floor', took: readonly number[]): void {
    const pool = this.#pools.get(what) ?? { ours: [], floor: [] };
    pool[whose].push(...took);
    this.#pools.set(what, pool);
  }

  rows(): string[][] {
    const rows = [['', 'ours', 'barest', 'ratio', 'aim']];
    for (const [what, { unit, aim, ours, floor }] of this.#pairs) {
      const ratios = ours.map((one, i) => one / (floor[i] ?? Number.NaN));
      rows.push([
        what,
        shown(median(ours), unit),
        shown(median(floor), unit),
        median(ratios).toFixed(2),
        aim,
      ]);
    }
    for (const [what, { ours, floor }] of this.#pools)
      for (const part of [0.5, 0.99]) {
        const [mine, theirs] = [percentile(ours, part), percentile(floor, part)];
        const aim = part === 0.99 && what === '/reading at 100/s' ? '+ 3 ms' : '';
        rows.push([
          `${what}, p${part * 100}`,
          shown(mine, 'ms'),
          shown(theirs, 'ms'),
          (mine / theirs).toFixed(2),
          aim,
        ]);
      }
    return rows;
  }

  table(): string {
    const rows = this.rows();
    const width = (column: number): number => Math.max(...rows.map((row) => (row[column] ?? '').length));
    return rows
      .map((row) =>
        row.map((cell, i) => (i === 0 ? cell.padEnd(width(i)) : cell.padStart(width(i)))).join('  '),
      )
      .join('\n');
  }

  write(file: string, more: object): void {
    const machine = { node: process.version, processor: cpus()[0]?.model, cores: cpus().length };
    const pairs = Object.fromEntries(this.#pairs);
    writeFileSync(file, JSON.stringify({ machine, table: this.rows(), pairs, ...more }, undefined, 2));
  }
}

const shown = (value: number, unit: string): string => `${value.toFixed(value < 10 ? 2 : 0)} ${unit}`;
