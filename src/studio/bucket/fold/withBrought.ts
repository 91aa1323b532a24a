import type { Brought, BucketEntry, BucketEventOf } from '../bucketEvent.ts';
import type { BucketCaution } from '../../settings/bucketSettings.ts';
import type { BucketState } from '../bucketState.ts';
import { without } from '../without.ts';

const together = (...all: readonly (readonly BucketCaution[])[]): BucketCaution[] => [
  ...new Set(all.flat().filter((caution) => caution !== 'children')),
];

/** One hold for everything: a second reason is added to the first. */
const addHold = (state: BucketState, { at, by, seq }: BucketEntry, hold: NonNullable<Brought['hold']>) =>
  state.hold
    ? { ...state.hold, why: `${state.hold.why}; ${hold.why}`, seq }
    : { ...hold, by, since: at, seq };

/** Folds what an addition brought along: its hazards, a hold, and that children may no longer use it. */
export const withBrought = (state: BucketState, entry: BucketEntry, brings: Brought): BucketState => ({
  ...state,
  settings: { ...state.settings, cautions: together(state.settings.cautions, brings.cautions) },
  brought: [...(state.brought ?? []), { seq: entry.seq, cautions: brings.cautions }],
  ...(brings.hold && { hold: addHold(state, entry, brings.hold) }),
  ...(brings.foreign && { apart: entry.seq }),
});

/**
 * A keeper's change counts from when it was logged: it does not cover an addition that was logged later, even if that
 * happened earlier.
 */
const isLoggedAfter = ({ seq }: BucketEntry, than: number): boolean => seq > than;

/**
 * A keeper's hold. A hold that an addition brought stays beside it, until a release that was logged after the
 * addition.
 */
export const withHold = (
  state: BucketState,
  entry: BucketEntry,
  { cause, why }: BucketEventOf<'hold'>,
): BucketState => {
  const hold = { cause, why, by: entry.by, since: entry.at };
  const { hold: before } = state;
  return before?.seq === undefined
    ? { ...state, hold }
    : { ...state, hold: { ...hold, why: `${why}; ${before.why}`, seq: before.seq } };
};

/** The cautions that a keeper set, and those of additions that were logged later. */
export const withCautionsSet = (
  state: BucketState,
  entry: BucketEntry,
  { settings: { glaze, cautions } }: BucketEventOf<'change'>,
): BucketState => {
  const { apart, brought, settings } = state;
  const isSame = glaze !== undefined && apart !== undefined && isLoggedAfter(entry, apart);
  const next = isSame ? without(state, 'apart') : state;
  if (cautions === undefined || !brought) return next;
  const unseen = brought.filter(({ seq }) => !isLoggedAfter(entry, seq));
  if (unseen.length === 0) return without(next, 'brought');
  const all = together(settings.cautions, ...unseen.map((one) => one.cautions));
  return { ...next, brought: unseen, settings: { ...settings, cautions: all } };
};

/** Releases the bucket, unless the reason for the hold was logged after the release. */
export const withRelease = (state: BucketState, entry: BucketEntry): BucketState => {
  const { hold } = state;
  return hold?.seq === undefined || isLoggedAfter(entry, hold.seq) ? without(state, 'hold') : state;
};
