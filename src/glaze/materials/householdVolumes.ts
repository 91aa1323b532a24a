import { millilitres } from '../units.ts';

const usGallon = 3785.411784;
const imperialGallon = 4546.09;

/**
 * Kitchen and workshop measures. US and imperial: the defined gallons, GNU units 2.22; metric
 * spoons and cup: *common practice*; a drop of 0.05 ml: *common practice*.
 */
export const householdVolumes = {
  'us-tsp': millilitres(usGallon / 768),
  'us-tbsp': millilitres(usGallon / 256),
  'us-floz': millilitres(usGallon / 128),
  'us-cup': millilitres(usGallon / 16),
  'us-pint': millilitres(usGallon / 8),
  'us-quart': millilitres(usGallon / 4),
  'us-gallon': millilitres(usGallon),
  'imp-floz': millilitres(imperialGallon / 160),
  'imp-pint': millilitres(imperialGallon / 8),
  'imp-quart': millilitres(imperialGallon / 4),
  'imp-gallon': millilitres(imperialGallon),
  'metric-tsp': millilitres(5),
  'metric-tbsp': millilitres(15),
  'metric-cup': millilitres(250),
  drop: millilitres(0.05),
} as const;
