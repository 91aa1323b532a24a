import type { ResistCoat } from './resistCoat.ts';
import { isTooColdForFilm, longest, timesByAir } from './dryingFactor.ts';

/** Why an emulsion may not be dry when its hours are over: it is too cold for a film, or the air takes up hardly any water. */
export type CoatDoubt = { why: 'cold' } | { why: 'damp'; times: number };

/** What is doubtful of a coat, whatever its hours; undefined for a usual room, and for what needs no drying. */
export const coatDoubt = ({
  resist,
  temperature,
  humidity,
}: Pick<ResistCoat, 'resist' | 'temperature' | 'humidity'>): CoatDoubt | undefined => {
  if (resist !== 'wax' && resist !== 'latex') return undefined;
  if (temperature !== undefined && isTooColdForFilm(temperature)) return { why: 'cold' };
  const times = timesByAir({
    ...(temperature !== undefined && { temperature }),
    ...(humidity !== undefined && { humidity }),
  });
  return times.ok && times.value > longest ? { why: 'damp', times: times.value } : undefined;
};
