import type { Component } from './mixture.ts';

/**
 * An account that has forgotten one of its places: as unsure of it as at the start, and of how it goes with the rest.
 */
export const forgotten = (one: Component, at: number, value: number, sd: number): Component => {
  const size = one.mean.length;
  return {
    ...one,
    mean: one.mean.map((known, i) => (i === at ? value : known)),
    covariance: one.covariance.map((known, i) => {
      const [row, column] = [Math.floor(i / size), i % size];
      if (row === at && column === at) return sd * sd;
      return row === at || column === at ? 0 : known;
    }),
  };
};
