import type { ResistCoat } from './resistCoat.ts';
import { isTooColdForFilm, longestDryingFactor, timesByAir } from './dryingFactor.ts';

/** Why an emulsion may not be dry after its hours: it is too cold to form a film, or the air is almost saturated, or both. */
export type CoatDoubt = { why: 'cold'; times?: number } | { why: 'damp'; times: number };

/** What is doubtful about a coat's drying; undefined in a usual room, and for a resist that does not dry. */
export const coatDoubt = ({
  resist,
  temperature,
  humidity,
}: Pick<ResistCoat, 'resist' | 'temperature' | 'humidity'>): CoatDoubt | undefined => {
  if (resist !== 'wax' && resist !== 'latex') return undefined;
  const times = timesByAir({ temperature, humidity });
  const damp = times.ok && times.value > longestDryingFactor ? { times: times.value } : undefined;
  if (temperature !== undefined && isTooColdForFilm(temperature)) return { why: 'cold', ...damp };
  return damp && { why: 'damp', ...damp };
};
