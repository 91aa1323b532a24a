import { definedOnly } from '../../../definedOnly.ts';
import type { Observation, StirTool } from '../bucketEvent.ts';
import type { BucketState } from '../bucketState.ts';
import { withTrouble, withVoid } from '../withVoid.ts';
import { days, minutes, since, type Instant } from '../../ids.ts';
import { without } from '../without.ts';

/** Minutes that loosen a gel (common practice). */
export const longStir = 5;
/** A gel builds up again within hours. What was stirred long, and is thick again within so many days, is thick by itself. */
const stirredOnLately = days(14);

/** When it was stirred long before, so lately that another long stir would only put it off. */
export const stirredLongBefore = (stir: BucketState['stir'], at: Instant): Instant | undefined =>
  stir?.longAt !== undefined && (stir.minutes ?? 0) < longStir && since(stir.longAt, at) <= stirredOnLately
    ? stir.longAt
    : undefined;

/** Stirs closer together than this count as one stirring. */
const oneStirring = minutes(15);

/** Folds what somebody saw: a cake stays until it is reported gone, lumps until they are sieved out. */
export const applyObservations = (
  state: BucketState,
  seen: readonly Observation[],
  at: Instant,
): BucketState => {
  // A cake that was broken up never mixes back in fully: earlier readings no longer apply.
  let next = seen.includes('cake') ? withVoid(state, 'cake', at) : { ...state };
  if (seen.includes('none') || seen.includes('cake-gone')) next = without(next, 'cake');
  if (seen.includes('clear-water')) next.clearWater = { since: at };
  if (seen.includes('cake')) next.cake = { since: next.cake?.since ?? at };
  const lump = seen.find((sight) => sight === 'lumps' || sight === 'skin');
  if (lump && next.unsieved?.what !== 'frozen') next.unsieved = { what: lump, since: at };
  // Ice is frost, as when a keeper holds a bucket for it.
  return seen.includes('ice') ? withTrouble(next, 'frozen', at) : next;
};

export const withStir = (
  state: BucketState,
  stir: { at: Instant; minutes?: number; tool?: StirTool },
): BucketState => {
  const before = state.stir;
  const goesOn = before !== undefined && since(before.at, stir.at) <= oneStirring;
  const together = (goesOn ? (before.minutes ?? 0) : 0) + (stir.minutes ?? 0);
  const longAt = together >= longStir ? stir.at : before?.longAt;
  const mixedAt = stir.tool === 'mixer' ? stir.at : before?.mixedAt;
  const next = { ...without(state, 'clearWater') };
  const { lastAt, stirredIn } = next.flocculant;
  if (lastAt !== undefined && lastAt <= stir.at && stirredIn === undefined)
    next.flocculant = { ...next.flocculant, stirredIn: stir.at };
  if (next.efflux) next.efflux = { ...next.efflux, stirredSince: true };
  if (next.look) next.look = { ...next.look, stirredSince: true };
  next.stir = {
    at: stir.at,
    ...(together > 0 && { minutes: together }),
    ...definedOnly({ mixedAt, longAt }),
  };
  return next;
};
