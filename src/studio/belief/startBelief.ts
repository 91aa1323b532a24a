import type { BucketSettings } from '../settings/bucketSettings.ts';
import type { Instant } from '../ids.ts';
import {
  type Belief,
  type Component,
  addSpread,
  average,
  nothingCounted,
  ownPlaces,
  place,
  zeros,
} from './mixture.ts';
import { unknown, usual } from './priors.ts';

/** The settings of a bucket that its belief depends on. */
export type Windows = Pick<BucketSettings, 'gravity' | 'efflux' | 'solids' | 'pail'>;

/** How exactly people say how full it is, in ln litres (common practice). */
const toldVolume = 0.05;

/** ln seconds in mid-window. */
export const middleFlow = ({ efflux }: Windows): number =>
  efflux ? Math.log(Math.sqrt(efflux.low * efflux.high)) : Math.log(usual.seconds);

export const middleGravity = ({ gravity }: Windows): number =>
  gravity ? (gravity.low + gravity.high) / 2 : usual.gravity;

const blank = (windows: Windows, size: number): Component => {
  const mean = zeros(size);
  const covariance = zeros(size * size);
  const set = (at: number, value: number, sd: number) => {
    mean[at] = value;
    covariance[at * size + at] = sd ** 2;
  };
  const held = windows.pail === undefined ? usual.litres : (0.6 * windows.pail) / 1000;
  set(place.gravity, middleGravity(windows), windows.gravity ? unknown.gravity : usual.gravitySd);
  set(place.volume, Math.log(held), unknown.volume);
  set(place.flow, middleFlow(windows), unknown.flow);
  return { weight: 1, mean, covariance, counts: [...nothingCounted] };
};

/**
 * A bucket of which nothing from before holds any more, except how far its instruments are off, what was counted of
 * its people, and roughly how full it is.
 */
export const nothingHolds = (components: readonly Component[], windows: Windows): Component => {
  const size = components[0]?.mean.length ?? ownPlaces;
  const next = blank(windows, size);
  const { weight, mean, counts } = average(components);
  next.mean[place.volume] = mean[place.volume] ?? 0;
  for (let i = ownPlaces; i < size; i++) next.mean[i] = mean[i] ?? 0;
  for (const one of components)
    addSpread(next.covariance, one, { mean, part: one.weight / weight, from: ownPlaces });
  return { ...next, counts };
};

/** The belief that a bucket begins with. */
export const startBelief = (at: Instant, windows: Windows, millilitres?: number): Belief => {
  const one = blank(windows, ownPlaces);
  if (millilitres !== undefined && millilitres > 0) {
    one.mean[place.volume] = Math.log(millilitres / 1000);
    one.covariance[place.volume * (ownPlaces + 1)] = toldVolume ** 2;
  }
  return { at, days: 0, instruments: [], components: [one] };
};

/** Begins anew, as after a frost: what was measured of it tells nothing of what it is now. */
export const startAnew = (belief: Belief, windows: Windows): Belief => {
  const { visit: _, ...rest } = belief;
  return { ...rest, components: [nothingHolds(belief.components, windows)] };
};
