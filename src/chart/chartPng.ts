import { fileURLToPath } from 'node:url';
import { Resvg } from '@resvg/resvg-js';
import type { Chart } from '../contract/contract.ts';
import { chartSvg } from './chartSvg.ts';

/** A bare server has no fonts: ours comes with the program. */
const font = fileURLToPath(import.meta.resolve('#chart/Inter_400Regular.ttf'));

/** A chart as a PNG, twice as fine as it is shown, for phones. */
export const chartPng = (chart: Chart): Uint8Array =>
  new Resvg(chartSvg(chart), {
    font: { fontFiles: [font], loadSystemFonts: false, defaultFontFamily: 'Inter' },
    fitTo: { mode: 'zoom', value: 2 },
  })
    .render()
    .asPng();
