import type { Component } from './mixture.ts';
import { toldTaken } from './priors.ts';
import { type Addition, withAdded } from './withAdded.ts';

/** Somebody was told an amount and logged a stir after it, but no addition: one time in two it went in. */
export const withTold = (components: readonly Component[], told: Addition): Component[] =>
  components.flatMap((one) => [
    { ...one, weight: one.weight * (1 - toldTaken) },
    withAdded({ ...one, weight: one.weight * toldTaken }, told),
  ]);
