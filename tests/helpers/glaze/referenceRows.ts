import { readdirSync, readFileSync } from 'node:fs';

/** A published or independently computed value: what goes in, what must come out, how near, and who says so. */
export interface ReferenceRow {
  id: string;
  topic: string;
  quantity: string;
  inputs: Record<string, { value: number | string; unit: string }>;
  expected: { value: number; unit: string; range?: [number, number] };
  tolerance: { type: 'abs' | 'rel'; value: number };
  source: string;
  seen: 'seen' | 'computed' | 'memory';
}

const folder = new URL('../../reference/', import.meta.url);

export const referenceRows: readonly ReferenceRow[] = readdirSync(folder)
  .filter((name) => name.endsWith('.json'))
  .flatMap((name): ReferenceRow[] => JSON.parse(readFileSync(new URL(name, folder), 'utf8')));

/** A named input of a row, as a number. */
export const input = (row: ReferenceRow, name: string): number => {
  const found = row.inputs[name]?.value;
  if (typeof found !== 'number') throw new Error(`${row.id} has no number ${name}`);
  return found;
};

/** A named input of a row, as text. */
export const word = (row: ReferenceRow, name: string): string => {
  const found = row.inputs[name]?.value;
  if (typeof found !== 'string') throw new Error(`${row.id} has no word ${name}`);
  return found;
};

export const allowance = ({ expected, tolerance }: ReferenceRow): number =>
  tolerance.type === 'abs' ? tolerance.value : Math.abs(expected.value) * tolerance.value;
