import { readdirSync, readFileSync } from 'node:fs';

/** A published or independently computed value: inputs, expected output, tolerance and source. */
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

/** A row's input as a number. */
export const input = (row: ReferenceRow, name: string): number => {
  const found = row.inputs[name]?.value;
  if (typeof found !== 'number') throw new Error(`${row.id} has no number ${name}`);
  return found;
};

/** A row's input as text. */
export const word = (row: ReferenceRow, name: string): string => {
  const found = row.inputs[name]?.value;
  if (typeof found !== 'string') throw new Error(`${row.id} has no word ${name}`);
  return found;
};

export const allowance = ({ expected, tolerance }: ReferenceRow): number =>
  tolerance.type === 'abs' ? tolerance.value : Math.abs(expected.value) * tolerance.value;
