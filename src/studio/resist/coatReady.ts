import type { ResistCoat } from './resistCoat.ts';
import { dryingFactor } from './dryingFactor.ts';
import type { Instant } from '../ids.ts';
import { dryReady, type DryReady } from './overnight.ts';
import type { Studio } from '../settings/studio.ts';

/** When a coat may be glazed over, by the studio's present hours and house rule. */
export const coatReady = (
  { resist, onAt, temperature, humidity }: Pick<ResistCoat, 'resist' | 'onAt' | 'temperature' | 'humidity'>,
  { zone, hours, drying }: Pick<Studio, 'zone' | 'hours' | 'drying'>,
): DryReady => {
  const factor = dryingFactor({ temperature, humidity });
  if (!factor.ok) throw new Error(`a coat was logged in air that is none: ${temperature} °C, ${humidity}`);
  const { minimumHours, night } = drying;
  return dryReady({
    kind: resist,
    onAt,
    zone,
    hours,
    minimumHours,
    dryingFactor: factor.value,
    ...(night === false && { noNight: true as const }),
  });
};

export const isReadyAt = (ready: DryReady, now: Instant): boolean =>
  ready !== 'never' && ready.readyAt <= now;
