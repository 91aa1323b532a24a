import { definedOnly } from '../../definedOnly.ts';
import type { ResistCoat } from './resistCoat.ts';
import { isTooColdForFilm, longestDryingFactor, timesByAir } from './dryingFactor.ts';

/** Why an emulsion may not be dry after its hours: it is too cold to form a film, or the air is almost saturated. */
export type CoatDoubt = { why: 'cold' } | { why: 'damp'; times: number };

/** What is doubtful about a coat's drying; undefined in a usual room, and for a resist that does not dry. */
export const coatDoubt = ({
  resist,
  temperature,
  humidity,
}: Pick<ResistCoat, 'resist' | 'temperature' | 'humidity'>): CoatDoubt | undefined => {
  if (resist !== 'wax' && resist !== 'latex') return undefined;
  if (temperature !== undefined && isTooColdForFilm(temperature)) return { why: 'cold' };
  const times = timesByAir(definedOnly({ temperature, humidity }));
  return times.ok && times.value > longestDryingFactor ? { why: 'damp', times: times.value } : undefined;
};
