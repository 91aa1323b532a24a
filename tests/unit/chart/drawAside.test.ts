import { expect, it } from 'vitest';
import { chartPng } from '../../../src/chart/chartPng.ts';
import { chartSvg } from '../../../src/chart/chartSvg.ts';
import { drawPng, drawSvg } from '../../../src/chart/drawAside.ts';
import { dark } from '../../../src/chart/theme.ts';
import type { Chart } from '../../../src/contract/contract.ts';
import { instant } from '../../../src/studio/ids.ts';

const noon = Date.UTC(2026, 2, 20, 12);

const chart: Chart = {
  title: 'Gull Grey',
  alt: 'Chart of Gull Grey: 2 gravity readings',
  key: 'Filled dot: a reading that counts.',
  zone: 'America/St_Johns',
  series: [
    {
      label: 'Specific gravity',
      unit: '',
      band: { low: 1.42, high: 1.46 },
      points: [
        { at: instant(noon - 3_600_000), value: 1.45, u95: 0.02, believed: true },
        { at: instant(noon), value: 1.44, u95: 0.02, believed: true },
      ],
    },
  ],
  marks: [],
};
const size = { width: 440, panelHeight: 200 };

it('a chart that another thread draws is the same', async () => {
  const [png, svg] = await Promise.all([drawPng(chart), drawSvg(chart, dark, size, true)]);
  expect(Buffer.from(png).equals(chartPng(chart))).toBe(true);
  expect(svg).toBe(chartSvg(chart, dark, size, true));
});

it('one that cannot be drawn is refused, and the next is drawn', async () => {
  const nowhere = { ...chart, zone: 'Nowhere/Land' };
  await expect(drawSvg(nowhere, dark, size, false)).rejects.toThrow('Nowhere/Land');
  expect(await drawSvg(chart, dark, size, false)).toContain('Gull Grey');
});
