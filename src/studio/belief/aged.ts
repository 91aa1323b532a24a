import { countsOfEvents } from '../../glaze/statistics/countsOfEvents.ts';
import { days, hours, since, type Instant } from '../ids.ts';
import { type Belief, type Component, counted, normalized, onlyContents, place } from './mixture.ts';
import {
  evaporationPerDay,
  longestAged,
  loosened,
  nothingHoldsPerDay,
  priorDays,
  sizedFor,
  unlogged,
  walkPerDay,
} from './priors.ts';
import { nothingHolds, type Windows } from './startBelief.ts';
import { withAdded, withMoved } from './withAdded.ts';

type Kind = keyof typeof unlogged;

/** Always in this order, so that a belief rebuilt from all entries equals the one updated entry by entry. */
const kinds: readonly Kind[] = ['water', 'powder', 'waterOut', 'salt'];

/** A branch less likely than this is not worth following. */
const leastBranch = 1e-4;

/** What a number of events of a kind, of so many litres in all, does. */
const happened = (one: Component, kind: Kind, size: number, sd: number, solids: number): Component => {
  switch (kind) {
    case 'water':
      return withAdded(one, { gravity: 1, litres: size, sd });
    case 'powder':
      return withAdded(one, { gravity: solids, litres: size, sd });
    case 'waterOut':
      return withAdded(one, { gravity: 1, litres: -size, sd });
    case 'salt':
      return withMoved(one, [place.flow, size, sd]);
  }
};

/** What strangers and the air do to a pail is less in a small one. */
const smallness = ({ mean }: Component): number => Math.min(1, Math.exp(mean[place.volume] ?? 0) / sizedFor);

/** How long nobody logged anything, and how long it was watched before that. */
interface Silence {
  days: number;
  watched: number;
}

/** Every account becomes two: none of a kind happened, or some did. */
const split = (
  components: readonly Component[],
  kind: Kind,
  { days, watched }: Silence,
  solids: number,
): Component[] => {
  const { perDay, size: usualSize, sd: usualSd } = unlogged[kind];
  const next: Component[] = [];
  let before: number | undefined;
  let found: ReturnType<typeof countsOfEvents> | undefined;
  for (const one of components) {
    const seen = one.counts[counted[kind]] ?? 0;
    // Accounts next to each other often have the same count, because they came from one: then this is worked out
    // once.
    if (found === undefined || seen !== before)
      found = countsOfEvents({ shape: priorDays * perDay + seen, over: priorDays + watched, days });
    before = seen;
    if (!found.ok || one.weight * (1 - found.value.none) < leastBranch) {
      next.push(one);
      continue;
    }
    const { none, mean, variance } = found.value;
    const part = kind === 'salt' ? 1 : smallness(one);
    const size = part * usualSize;
    const sd = part * usualSd;
    const counts = one.counts.slice();
    counts[counted[kind]] = seen + mean;
    const spread = Math.sqrt(mean * sd * sd + variance * size * size);
    next.push(
      { ...one, weight: one.weight * none },
      happened({ ...one, weight: one.weight * (1 - none), counts }, kind, mean * size, spread, solids),
    );
  }
  return next;
};

const dried = (one: Component, gone: number): Component => {
  const { litres, sd } = evaporationPerDay;
  const part = gone * smallness(one);
  const drier = withAdded(one, { gravity: 1, litres: -litres * part, sd: sd * part });
  const root = Math.sqrt(gone);
  return withMoved(
    drier,
    [place.gravity, 0, walkPerDay.gravity * root],
    [place.volume, 0, walkPerDay.volume * root],
    [place.flow, 0, walkPerDay.flow * root],
  );
};

/** What a long stir loosened gels again. */
const gelled = (belief: Belief, now: Instant): Belief => {
  const { loosened: at, ...rest } = belief;
  if (at === undefined || since(at, now) < hours(loosened.hours)) return belief;
  return {
    ...rest,
    components: rest.components.map((one) => withMoved(one, [place.flow, -loosened.flow, loosened.sd])),
  };
};

/** How much of what was known no longer holds. */
const lostAfter = (gone: number): number => {
  const stays = (1 - nothingHoldsPerDay) ** Math.min(gone, longestAged);
  return 1 - stays * Math.exp(-Math.max(0, gone - longestAged) / longestAged);
};

/**
 * What is still believed of a bucket some time later, when nobody has logged anything: it dried out a little, something
 * may have gone in, and after a long silence little is known. A view ages a copy; an entry that bears on the contents
 * ages the belief itself. Not yet reduced to a few components.
 */
export const aged = (before: Belief, now: Instant, windows: Windows): Belief => {
  const belief = gelled(before, now);
  const gone = since(belief.at, now) / days(1);
  if (!(gone > 0)) return belief;
  const reckoned = Math.min(gone, longestAged);
  let components = belief.components.map((one) => dried(one, reckoned));
  const silence = { days: reckoned, watched: belief.days };
  for (const kind of kinds) components = split(components, kind, silence, windows.solids);
  const lost = lostAfter(gone);
  if (lost >= leastBranch) {
    const anew = nothingHolds(belief.components, windows);
    components = components.map((one) => ({ ...one, weight: one.weight * (1 - lost) }));
    components.push({ ...anew, weight: lost });
  }
  return { ...belief, at: now, days: belief.days + gone, components: normalized(components) };
};

/** As `aged`, and only of what is in the pail: enough for a view. */
export const agedView = (belief: Belief, now: Instant, windows: Windows): Belief =>
  aged({ ...belief, instruments: [], components: belief.components.map(onlyContents) }, now, windows);
