import { definedOnly } from '../../../definedOnly.ts';
import type { BucketEntry, FlowLook, BucketEventOf } from '../bucketEvent.ts';
import { grams, type Millilitres } from '../../../glaze/units.ts';
import { chanceNear } from '../../belief/chances.ts';
import type { Belief } from '../../belief/mixture.ts';
import { startBelief } from '../../belief/startBelief.ts';
import type { BucketSettings } from '../../settings/bucketSettings.ts';
import type { BucketState } from '../bucketState.ts';
import {
  type Contents,
  withUnloggedUse,
  contentsFrom,
  gravityOf,
  volumeOf,
  type Estimate,
} from '../../contents/contents.ts';
import { days, since, type StreamNo } from '../../ids.ts';
import { applyToBelief } from './applyToBelief.ts';
import { applyRest } from '../rests.ts';
import { applyAddition } from './applyAddition.ts';
import { withBrought, withCautionsSet, withHold, withRelease } from './withBrought.ts';
import { applyReading } from './applyReading.ts';
import { applyObservations, withStir } from './applyObservations.ts';
import {
  applyVolume,
  changeContents,
  gravityBeforeReading,
  statedVolume,
  withPrediction,
} from './applyVolume.ts';
import { without } from '../without.ts';
import { withSieve, withTrouble } from '../withVoid.ts';
import { undoneIn } from '../../entry.ts';

/** Enough tiles for a line; older ones no longer describe the bucket. */
const mostTiles = 40;

const withChange = (state: BucketState, entry: BucketEntry, event: BucketEventOf<'change'>): BucketState => {
  const settings: BucketSettings = { ...state.settings, ...event.settings };
  for (const name of event.cleared ?? []) delete (settings as Partial<BucketSettings>)[name];
  const { solids } = state.settings;
  const recast = (contents: Contents) =>
    contentsFrom(volumeOf(contents, solids), gravityOf(contents, solids), settings.solids);
  // A new gravity of the powder changes the computed contents, not the readings.
  const known =
    settings.solids === solids ? state : { ...without(state, 'drift'), ...changeContents(state, recast) };
  const next = withCautionsSet({ ...known, settings }, entry, event);
  return event.volume === undefined
    ? next
    : withPrediction(applyVolume(next, statedVolume(event.volume), entry.at));
};

/** How it ran, seen right after a stir and logged along with it. */
const withLook = (state: BucketState, entry: BucketEntry, look: FlowLook | undefined): BucketState =>
  look === undefined ? state : applyReading(state, entry, { kind: 'reading', look, seen: [] });

const stateFromSetup = (
  no: StreamNo,
  entry: BucketEntry,
  { settings, volume }: BucketEventOf<'setup'>,
): BucketState => ({
  no,
  seq: entry.seq,
  foldedTo: entry.at,
  settings,
  retired: false,
  moved: 0,
  carried: 0,
  unknownSince: [],
  flocculant: { heptahydrate: grams(0), doses: 0, unknown: false },
  belief: startBelief(entry.at, settings, volume),
  ...(volume !== undefined && {
    volumeAt: entry.at,
    contents: contentsFrom(statedVolume(volume), gravityBeforeReading(settings), settings.solids),
  }),
});

const applyEntry = (state: BucketState, entry: BucketEntry): BucketState => {
  const { event, at } = entry;
  switch (event.kind) {
    case 'reading':
      return applyReading(state, entry, event);
    case 'addition':
      return event.brings
        ? withBrought(applyAddition(state, entry, event), entry, event.brings)
        : applyAddition(state, entry, event);
    case 'stir': {
      const { minutes, tool, seen, look } = event;
      const stirred = withStir(applyRest(state, seen, at), { at, ...definedOnly({ minutes, tool }) });
      return withLook(applyObservations(stirred, seen, at), entry, look);
    }
    case 'sieve':
      return withSieve(state, at, event.mesh);
    case 'change':
      return withChange(state, entry, event);
    case 'hold':
      return event.cause === 'frozen' || event.cause === 'contaminated'
        ? withTrouble(withHold(state, entry, event), event.cause, at)
        : withHold(state, entry, event);
    case 'release':
      return withRelease(state, entry);
    case 'retire':
      return { ...state, retired: true };
    case 'tile': {
      const { kind: _, ...tile } = event;
      return { ...state, tiles: [...(state.tiles ?? []), { ...tile, at }].slice(-mostTiles) };
    }
    case 'setup':
    case 'learned':
    case 'undo':
      return state;
  }
};

/** As sure as one is before water goes in or powder. */
const bearsOut = 0.975;

/** A reading that the logbook did not expect counts at once where all that is believed of the bucket bears it out. */
const withBorneOut = (belief: Belief, { believed, unexpected, seq }: BucketState): Belief =>
  believed?.seq === seq &&
  unexpected?.to.seq === seq &&
  chanceNear(belief, { value: believed.value, within: 2 * believed.u95 }) >= bearsOut
    ? { ...belief, borneOut: seq }
    : belief;

/** Applies one entry to the state. It must not be an undo, nor have happened before what is already folded. */
export const applyToBucket = (state: BucketState, entry: BucketEntry): BucketState => {
  const passed = since(state.foldedTo, entry.at) / days(1);
  const before = { ...state, ...changeContents(state, (contents) => withUnloggedUse(contents, passed)) };
  // A copy of its own by now.
  const after = applyEntry(before, entry);
  after.seq = entry.seq;
  after.foldedTo = entry.at;
  after.belief = withBorneOut(applyToBelief(state.belief, { entry, before: state, after }), after);
  return after;
};

/**
 * Every state that a bucket went through, in the order in which its entries happened, without those that were undone.
 */
export function* bucketStates(no: StreamNo, entries: readonly BucketEntry[]): Generator<BucketState> {
  const undone = undoneIn(entries);
  const [first, ...rest] = entries
    .filter(({ seq, event }) => event.kind !== 'undo' && !undone.has(seq))
    .sort(
      (a, b) =>
        Number(b.event.kind === 'setup') - Number(a.event.kind === 'setup') || a.at - b.at || a.seq - b.seq,
    );
  if (first?.event.kind !== 'setup') return;
  let state = stateFromSetup(no, first, first.event);
  yield state;
  for (const entry of rest) yield (state = applyToBucket(state, entry));
}

export const foldBucket = (no: StreamNo, entries: readonly BucketEntry[]): BucketState | undefined => {
  let state: BucketState | undefined;
  for (const next of bucketStates(no, entries)) state = next;
  return state && { ...state, seq: entries.reduce((most, { seq }) => (seq > most ? seq : most), state.seq) };
};

export const volumeHeld = (state: BucketState): Estimate<Millilitres> | undefined =>
  state.contents && volumeOf(state.contents, state.settings.solids);
