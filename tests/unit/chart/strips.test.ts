import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { chartPng } from '../../../src/chart/chartPng.ts';
import { chartSvg } from '../../../src/chart/chartSvg.ts';
import type { Chart } from '../../../src/contract/contract.ts';
import { instant } from '../../../src/studio/ids.ts';

const until = Date.UTC(2026, 2, 20, 12);
const day = 86_400_000;

const strips = (count: number): Chart => ({
  strips: { from: instant(until - 14 * day), until: instant(until) },
  title: 'The last two weeks',
  alt: 'Gravity of the last two weeks',
  key: 'Band: the window.',
  zone: 'America/St_Johns',
  series: Array.from({ length: count }, (_, n) => ({
    label: `${n + 1} · <b>Gull</b> & "Grey" with a name that goes on and on`,
    unit: '',
    band: { low: 1.42, high: 1.46 },
    note: 'stir first',
    points: [
      { at: instant(until - 10 * day), value: 1.45, believed: true },
      { at: instant(until - day), value: 1.38, believed: false },
    ],
  })),
  marks: [],
});

describe('a picture of strips', () => {
  it('has one for each bucket, its window and its readings, and says in words what it shows', () => {
    const { document } = parseHTML(chartSvg(strips(12)));
    expect(document.querySelector('svg')?.getAttribute('aria-label')).toBe('Gravity of the last two weeks');
    expect(document.querySelectorAll('circle')).toHaveLength(24);
    expect(document.querySelector('b')).toBeNull();
    const ys = new Set([...document.querySelectorAll('circle')].map((one) => one.getAttribute('cy')));
    expect(ys.size).toBe(12);
  });

  it('keeps every dot within the picture, in two columns where there is room and one where there is not', () => {
    for (const width of [440, 720]) {
      const { document } = parseHTML(chartSvg(strips(40), undefined, { width, panelHeight: 200 }));
      const height = Number(document.querySelector('svg')?.getAttribute('height'));
      for (const dot of document.querySelectorAll('circle')) {
        expect(Number(dot.getAttribute('cx'))).toBeGreaterThan(0);
        expect(Number(dot.getAttribute('cx'))).toBeLessThan(width);
        expect(Number(dot.getAttribute('cy'))).toBeLessThan(height);
      }
      expect(height).toBeGreaterThan((width === 440 ? 40 : 20) * 50);
    }
  });

  it('is drawn as a PNG, also when a bucket was never read or nothing varies', () => {
    const [first] = strips(1).series;
    if (!first) throw new Error('no strip');
    const still = { ...first, points: first.points.map((point) => ({ ...point, value: 1.44 })) };
    const { band: _, ...bare } = still;
    const png = chartPng({ ...strips(0), series: [still, bare, { ...first, points: [] }] });
    expect([...png.slice(1, 4)]).toEqual([...Buffer.from('PNG')]);
  });
});
