import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';

const families = (file: string): string[] => {
  const text = readFileSync(new URL(`../../../src/${file}`, import.meta.url), 'utf8');
  const named = [...text.matchAll(/font(?:-family)?:\s*(?:[^;]*?\/[\d.]+\s+)?([^;]*);/g)];
  return named.flatMap(([, list = '']) => list.split(',').map((one) => one.trim()));
};

it.each(['room/page/looks/room.css', 'replies/batch/batchSheet.ts'])(
  '%s asks for the device’s own font, and for none by its name',
  (file) => {
    const asked = new Set(families(file));
    asked.delete('inherit');
    expect([...asked].toSorted()).toEqual(['sans-serif', 'system-ui']);
  },
);
