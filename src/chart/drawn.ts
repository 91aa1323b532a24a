import type { Chart } from '../contract/contract.ts';
import type { ChartSize } from './chartSvg.ts';
import type { Theme } from './theme.ts';

/** What the drawing thread is asked for. */
export type ChartOrder =
  { as: 'png'; chart: Chart } | { as: 'svg'; chart: Chart; theme: Theme; size: ChartSize; pinnable: boolean };

/** What it answers: a picture, or what went wrong. */
export type Drawn = { picture: Uint8Array | string } | { failed: string };
