import { parseHTML } from 'linkedom';
import { describe, expect, it } from 'vitest';
import { chartPng } from '../../../src/chart/chartPng.ts';
import { chartSvg } from '../../../src/chart/chartSvg.ts';
import { dark } from '../../../src/chart/theme.ts';
import type { Chart } from '../../../src/contract/contract.ts';
import { instant } from '../../../src/studio/ids.ts';

const noon = Date.UTC(2026, 2, 20, 12);
const day = 86_400_000;

const chart: Chart = {
  title: 'Gull <script>alert(1)</script> & "Grey"',
  alt: 'Chart of Gull Grey: 3 gravity readings',
  key: 'Filled dot: a reading that counts. Hollow: not.',
  zone: 'America/St_Johns',
  series: [
    {
      label: 'Specific gravity',
      unit: '',
      band: { low: 1.42, high: 1.46 },
      points: [
        { at: instant(noon - 2 * day), value: 1.45, u95: 0.02, believed: true },
        { at: instant(noon - day), value: 1.38, u95: 0.02, believed: false },
        { at: instant(noon), value: 1.44, u95: 0.02, believed: true },
      ],
    },
  ],
  marks: [
    { at: instant(noon - day), label: 'stirred', kind: 'stir' },
    { at: instant(noon - day / 2), label: 'added', kind: 'addition' },
  ],
};

describe('a chart of a bucket', () => {
  it('says in words what it shows, for whoever cannot see it', () => {
    const { document } = parseHTML(chartSvg(chart));
    expect(document.querySelector('svg')?.getAttribute('aria-label')).toBe(chart.alt);
    expect(document.querySelector('svg > title')?.textContent).toBe(chart.alt);
  });

  it('shows what a member typed as plain text', () => {
    const svg = chartSvg(chart);
    expect(svg).not.toContain('<script');
    expect(parseHTML(svg).document.querySelector('svg > text')?.textContent).toBe(chart.title);
  });

  it('draws a reading that is not believed hollow, and the others filled', () => {
    const { document } = parseHTML(chartSvg(chart));
    const fills = [...document.querySelectorAll('circle')].map((circle) => circle.getAttribute('fill'));
    expect(fills).toHaveLength(3);
    expect(new Set([fills[0], fills[2]]).size).toBe(1);
    expect(fills[1]).not.toBe(fills[0]);
  });

  it('keeps its key within what stays in sight while the rest scrolls', () => {
    const key =
      'Filled dot: a reading that counts. Hollow dot: a reading that does not count. Band: the window.';
    const size = { width: 960, panelHeight: 320 };
    const { document } = parseHTML(chartSvg({ ...chart, key }, undefined, size, true));
    const lines = [...document.querySelectorAll('g > text[font-size="12"]')];
    expect(lines.map(({ textContent }) => textContent).join(' ')).toBe(key);
    const rects = [...document.querySelectorAll('clipPath rect')];
    for (const line of lines) {
      const [y, least] = [Number(line.getAttribute('y')), 16 + (line.textContent?.length ?? 0) * 6];
      const over = rects.filter((rect) => {
        const [top, height] = ['y', 'height'].map((name) => Number(rect.getAttribute(name)));
        return (top ?? 0) < y - 12 && y < (top ?? 0) + (height ?? 0);
      });
      expect(over.some((rect) => Number(rect.getAttribute('width')) >= least)).toBe(true);
    }
  });

  it('draws a single reading without dividing by zero', () => {
    const [series] = chart.series;
    const points = series?.points.slice(0, 1) ?? [];
    const svg = chartSvg({
      ...chart,
      series: [{ label: 'Cup time', unit: 's', points }],
      marks: [],
    });
    expect(svg).not.toContain('NaN');
    expect(svg).not.toContain('Infinity');
  });

  it('has a dark theme too', () => {
    expect(chartSvg(chart, dark)).toContain(dark.paper);
  });

  it('becomes a PNG with its words drawn on a machine without fonts', () => {
    const png = chartPng(chart);
    const untitled = chartPng({ ...chart, title: ' ', key: ' ' });
    expect([...png.subarray(0, 4)]).toEqual([0x89, 0x50, 0x4e, 0x47]);
    expect(Buffer.compare(png, untitled)).not.toBe(0);
  });
});
