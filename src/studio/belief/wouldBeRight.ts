import { bothIn, eachIn, exact, type In, type Marks, type Pair, rightIn } from './chances.ts';
import { type Component, place } from './mixture.ts';
import { leastLikely, type Met, splitByGlance, splitByReading } from './observed.ts';
import { noise } from './priors.ts';
import { middleFlow, type Windows } from './startBelief.ts';

/** Gravity and flow of an account once it took a sight as true. */
const narrowed = ({ one, along, difference, variance, shrink }: Met): Pair => {
  const size = along.length;
  const ofGravity = along[place.gravity] ?? 0;
  const ofFlow = along[place.flow] ?? 0;
  const [toGravity, toFlow] = [ofGravity / variance, ofFlow / variance];
  return {
    gravity: (one.mean[place.gravity] ?? 0) + toGravity * difference,
    flow: (one.mean[place.flow] ?? 0) + toFlow * difference,
    ofGravity: (one.covariance[0] ?? 0) - shrink * toGravity * ofGravity,
    ofFlow: (one.covariance[place.flow * (size + 1)] ?? 0) - shrink * toFlow * ofFlow,
    together: (one.covariance[place.flow] ?? 0) - shrink * toGravity * ofFlow,
  };
};

/**
 * Whether what is known already and what is open come to a bar. The chance of both is never more than that of either, and never less than what
 * the two leave to each other (Fréchet's bounds), which nearly always tells.
 */
const reaches = (bar: number, already: number, met: readonly Met[], right: Marks): boolean => {
  let [least, most] = [already, already];
  for (const { weight } of met) most += weight;
  const isOpen = () => least < bar && most >= bar;
  const open: { weight: number; pair: Pair; each: Omit<In, 'both'>; low: number; high: number }[] = [];
  for (const seen of met) {
    if (!isOpen()) break;
    const { weight } = seen;
    const pair = narrowed(seen);
    const each = eachIn(pair, right);
    const low = weight * Math.max(0, each.gravity + each.flow - 1);
    const high = weight * Math.min(each.gravity, each.flow);
    least += low;
    most += high - weight;
    open.push({ weight, pair, each, low, high });
  }
  for (const { weight, pair, each, low, high } of open) {
    if (!isOpen()) break;
    const both = weight * bothIn(pair, each, right, exact);
    least += both - low;
    most += both - high;
  }
  return least >= bar;
};

/**
 * Whether a bucket would be right in both with at least this chance, if it were looked at or timed now, and were right:
 * `ins` is how likely each account makes it so far. Never without both windows.
 */
export const wouldBeRight = (
  { components, ins }: { components: readonly Component[]; ins: readonly In[] },
  by: 'look' | 'seconds',
  windows: Windows,
  sure: number,
): boolean => {
  if (!windows.gravity || !windows.efflux) return false;
  const { met, unmoved } =
    by === 'look'
      ? splitByGlance(components, 'right', windows.efflux)
      : splitByReading(components, { at: place.flow, value: middleFlow(windows), sd: noise.flow });
  const leastWeight = leastLikely({ met, unmoved });
  const taken = met.filter(({ weight }) => weight >= leastWeight);
  let whole = 0;
  for (const { weight } of taken) whole += weight;
  let already = 0;
  unmoved.forEach(({ weight }, i) => {
    if (weight < leastWeight) return;
    whole += weight;
    already += weight * (ins[i]?.both ?? 0);
  });
  return reaches(sure * whole, already, taken, rightIn(windows));
};
