import type { Seconds } from '../../glaze/units.ts';
import type { Window } from '../settings/bucketSettings.ts';
import type { CupTime } from './bucketEvent.ts';

/** Whether a cup is the one that the bucket's window is for: any cup, until a keeper names one. */
export const isWindowsCup = (
  { cup, kind }: Pick<CupTime, 'cup' | 'kind'>,
  named: string | undefined,
): boolean => named === undefined || cup === named || kind === named;

/** A cup time against the window. */
export const timeBand = (seconds: CupTime['seconds'], window: Window<Seconds>): 'thin' | 'in' | 'thick' => {
  if (seconds === 'wont-run' || seconds > window.high) return 'thick';
  return seconds < window.low ? 'thin' : 'in';
};
