import { countsOfEvents } from '../../glaze/statistics/countsOfEvents.ts';
import { days, hours, since, type Instant } from '../ids.ts';
import {
  type Belief,
  type Component,
  copied,
  counted,
  made,
  onlyContents,
  place,
  weighAnew,
} from './mixture.ts';
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
import { addTo, move, withMoved } from './withAdded.ts';

type Kind = keyof typeof unlogged;

/** Always in this order, so that a belief rebuilt from all entries equals the one updated entry by entry. */
const kinds: readonly Kind[] = ['water', 'powder', 'waterOut', 'salt'];

/** A branch less likely than this is not worth following. */
const leastBranch = 1e-4;

/** Changes an account by events of one kind: `size` ± `sd` litres in all, into the `held` litres of its pail. */
const happen = (one: Component, kind: Kind, size: number, sd: number, solids: number, held: number): void => {
  switch (kind) {
    case 'water':
      return addTo(one, { gravity: 1, litres: size, sd }, held);
    case 'powder':
      return addTo(one, { gravity: solids, litres: size, sd }, held);
    case 'waterOut':
      return addTo(one, { gravity: 1, litres: -size, sd }, held);
    case 'salt':
      return move(one, place.flow, size, sd);
  }
};

const litresIn = ({ mean }: Component): number => Math.exp(mean[place.volume] ?? 0);

/** What strangers and the air do to a pail is less in a small one. */
const smallness = (litres: number): number => Math.min(1, litres / sizedFor);

/** How long nobody logged anything, and how long it was watched before that. */
interface Silence {
  days: number;
  watched: number;
}

/** Every account becomes two: none of a kind happened, or some did. The accounts given are one's own, and change. */
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
    next.push(one);
    const seen = one.counts[counted[kind]] ?? 0;
    // Accounts next to each other often have the same count, because they came from one: then this is worked out
    // once.
    if (found === undefined || seen !== before)
      found = countsOfEvents({ shape: priorDays * perDay + seen, over: priorDays + watched, days });
    before = seen;
    if (!found.ok || one.weight * (1 - found.value.none) < leastBranch) continue;
    const { none, mean, variance } = found.value;
    const some = copied(one);
    some.weight = one.weight * (1 - none);
    some.counts = [...one.counts];
    some.counts[counted[kind]] = seen + mean;
    one.weight *= none;
    const held = litresIn(one);
    const part = kind === 'salt' ? 1 : smallness(held);
    const size = part * usualSize;
    const sd = part * usualSd;
    const spread = Math.sqrt(mean * sd * sd + variance * size * size);
    happen(some, kind, mean * size, spread, solids, held);
    next.push(some);
  }
  return next;
};

/** Dries an account for some days, and lets it wander. */
const dry = (one: Component, gone: number): void => {
  const { litres, sd } = evaporationPerDay;
  const held = litresIn(one);
  const part = gone * smallness(held);
  addTo(one, { gravity: 1, litres: -litres * part, sd: sd * part }, held);
  const root = Math.sqrt(gone);
  move(one, place.gravity, 0, walkPerDay.gravity * root);
  move(one, place.volume, 0, walkPerDay.volume * root);
  move(one, place.flow, 0, walkPerDay.flow * root);
};

/** What a long stir loosened gels again. */
const gelled = (belief: Belief, now: Instant): Belief => {
  if (belief.loosened === undefined || since(belief.loosened, now) < hours(loosened.hours)) return belief;
  const { loosened: _, ...rest } = belief;
  return {
    ...rest,
    components: made(rest.components, (one) => withMoved(one, [place.flow, -loosened.flow, loosened.sd])),
  };
};

/** How much of what was known no longer holds. */
const lostAfter = (gone: number): number => {
  const stays = (1 - nothingHoldsPerDay) ** Math.min(gone, longestAged);
  return 1 - stays * Math.exp(-Math.max(0, gone - longestAged) / longestAged);
};

/** As `aged`; the accounts given are one's own, and change. */
const ageing = (before: Belief, now: Instant, windows: Windows): Belief => {
  const belief = gelled(before, now);
  const gone = since(belief.at, now) / days(1);
  if (!(gone > 0)) return belief;
  const reckoned = Math.min(gone, longestAged);
  const lost = lostAfter(gone);
  const anew = lost < leastBranch ? [] : [{ ...nothingHolds(belief.components, windows), weight: lost }];
  let { components } = belief;
  for (const one of components) dry(one, reckoned);
  const silence = { days: reckoned, watched: belief.days };
  for (const kind of kinds) components = split(components, kind, silence, windows.solids);
  if (anew.length > 0) for (const one of components) one.weight *= 1 - lost;
  components = weighAnew([...components, ...anew]);
  return { ...belief, at: now, days: belief.days + gone, components };
};

/**
 * What is still believed of a bucket some time later, when nobody has logged anything: it dried out a little, something
 * may have gone in, and after a long silence little is known. A view ages a copy; an entry that bears on the contents
 * ages the belief itself. Not yet reduced to a few components.
 */
export const aged = (belief: Belief, now: Instant, windows: Windows): Belief =>
  ageing({ ...belief, components: made(belief.components, copied) }, now, windows);

/** As `aged`, and only of what is in the pail: enough for a view. */
export const agedView = (belief: Belief, now: Instant, windows: Windows): Belief =>
  ageing({ ...belief, instruments: [], components: made(belief.components, onlyContents) }, now, windows);
