import type { BucketEvent, Brought, BucketEntry } from './bucketEvent.ts';
import type { BucketCaution } from '../settings/bucketSettings.ts';
import type { BucketState } from './bucketState.ts';

const together = (...all: readonly (readonly BucketCaution[])[]): BucketCaution[] => [
  ...new Set(all.flat().filter((caution) => caution !== 'children')),
];

/** One hold for all that is wrong with it: a second reason stands beside the first. */
const heldToo = (state: BucketState, { at, by, seq }: BucketEntry, hold: NonNullable<Brought['hold']>) =>
  state.hold
    ? { ...state.hold, why: `${state.hold.why}; ${hold.why}`, seq }
    : { ...hold, by, since: at, seq };

/** What an addition brought along: its hazards, a hold, and no more children. */
export const withBrought = (state: BucketState, entry: BucketEntry, brings: Brought): BucketState => ({
  ...state,
  settings: { ...state.settings, cautions: together(state.settings.cautions, brings.cautions) },
  brought: [...(state.brought ?? []), { seq: entry.seq, cautions: brings.cautions }],
  ...(brings.hold && { hold: heldToo(state, entry, brings.hold) }),
  ...(brings.foreign && { apart: entry.seq }),
});

/**
 * A keeper's word counts from when it was written down: it does not reach what went in by an entry that was logged
 * after it, though for an earlier hour.
 */
const isLater = ({ seq }: BucketEntry, than: number): boolean => seq > than;

/** Held by a keeper. What an addition holds it for stands beside that, and waits for a release that knew of it. */
export const withHold = (
  state: BucketState,
  entry: BucketEntry,
  { cause, why }: Extract<BucketEvent, { kind: 'hold' }>,
): BucketState => {
  const hold = { cause, why, by: entry.by, since: entry.at };
  const { hold: before } = state;
  return before?.seq === undefined
    ? { ...state, hold }
    : { ...state, hold: { ...hold, why: `${why}; ${before.why}`, seq: before.seq } };
};

/** The cautions that a keeper set, and those that came in by what was not logged yet. */
export const withCautionsSet = (
  state: BucketState,
  entry: BucketEntry,
  event: Extract<BucketEvent, { kind: 'change' }>,
): BucketState => {
  const next = { ...state };
  if (event.settings.glaze !== undefined && next.apart !== undefined && isLater(entry, next.apart))
    delete next.apart;
  if (event.settings.cautions === undefined || !next.brought) return next;
  const unseen = next.brought.filter(({ seq }) => !isLater(entry, seq));
  if (unseen.length > 0) {
    next.brought = unseen;
    next.settings = {
      ...next.settings,
      cautions: together(next.settings.cautions, ...unseen.map(({ cautions }) => cautions)),
    };
  } else delete next.brought;
  return next;
};

/** Released, unless what holds it was logged only after the keeper had released it. */
export const withRelease = (state: BucketState, entry: BucketEntry): BucketState => {
  const next = { ...state };
  if (next.hold?.seq === undefined || isLater(entry, next.hold.seq)) delete next.hold;
  return next;
};
