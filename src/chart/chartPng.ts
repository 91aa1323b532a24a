import { fileURLToPath } from 'node:url';
import { Resvg } from '@resvg/resvg-js';
import type { Chart } from '../contract/contract.ts';
import { chartSvg } from './chartSvg.ts';

/** A bare server has no fonts, so the program brings one. */
const font = fileURLToPath(import.meta.resolve('#chart/Inter_400Regular.ttf'));

/** A chart as a PNG at twice its size, for the fine screens of phones. */
export const chartPng = (chart: Chart): Uint8Array =>
  new Resvg(chartSvg(chart), {
    font: { fontFiles: [font], loadSystemFonts: false, defaultFontFamily: 'Inter' },
    fitTo: { mode: 'zoom', value: 2 },
  })
    .render()
    .asPng();
