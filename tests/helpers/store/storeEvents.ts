import { gravity, millilitres } from '../../../src/glaze/units.ts';
import type { BucketEvent } from '../../../src/studio/bucket/bucketEvent.ts';
import type { BucketSettings } from '../../../src/studio/settings/bucketSettings.ts';
import { hours, instant, days, type MemberId } from '../../../src/studio/ids.ts';
import type { Logged } from '../../../src/studio/logbook/ports.ts';

export const gullGrey: BucketSettings & { volume: number } = {
  name: 'Gull Grey',
  nick: 'gg',
  use: 'dipping',
  pail: millilitres(19_000),
  gravity: { low: gravity(1.42), high: gravity(1.46) },
  solids: gravity(2.6),
  restLimit: hours(4),
  shelfLife: days(7),
  mesh: 80,
  cautions: [],
  volume: 15_000,
};

/** Noon on 1 March 2026, plus so many minutes. */
export const noonPlus = (minutes: number) => instant(Date.UTC(2026, 2, 1, 12) + minutes * 60_000);

export const loggedAt = (by: MemberId, minutes: number, note?: string): Logged => ({
  at: noonPlus(minutes),
  loggedAt: noonPlus(minutes),
  by,
  ...(note !== undefined && { note }),
});

export const water = (volume: number): BucketEvent => ({
  kind: 'addition',
  added: { what: 'water', volume: millilitres(volume) },
});

export const stirredReading = (value: number): BucketEvent => ({
  kind: 'reading',
  gravity: { value: gravity(value), u95: 0.01, by: 'stated' },
  stirred: true,
  seen: [],
});
