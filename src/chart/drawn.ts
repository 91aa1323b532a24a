import type { Chart } from '../contract/contract.ts';
import type { ChartSize } from './chartSvg.ts';
import type { Theme } from './theme.ts';

export type ChartOrder =
  { as: 'png'; chart: Chart } | { as: 'svg'; chart: Chart; theme: Theme; size: ChartSize; pinnable: boolean };

export type Drawn = { picture: Uint8Array | string } | { failed: string };
