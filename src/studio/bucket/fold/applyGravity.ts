import { coverage95 } from '../../../glaze/statistics/normal.ts';
import { grams, millilitres, type Gravity, type Millilitres } from '../../../glaze/units.ts';
import type { BucketState, MeasuredGravity } from '../bucketState.ts';
import {
  type Contents,
  contentsFrom,
  withDrift,
  gravityOf,
  litreOf,
  powderIn,
  surpriseDeviations,
  volumeOf,
  withGravitySeen,
  withVolumeSeen,
  type Estimate,
} from '../../contents/contents.ts';
import { driftPoint } from '../../contents/driftPoint.ts';
import { evaporation } from '../../contents/evaporation.ts';
import { explainChange } from '../../contents/explainChange.ts';
import { days, since, type MemberId } from '../../ids.ts';
import { isAccountBroken } from '../withVoid.ts';
import type { Unexpected, UnloggedChange, WithInterval } from '../../contents/unloggedChange.ts';

/** The state keeps so many unlogged changes; older ones can be found in the entries. */
const mostChanges = 12;
const mostDriftPoints = 20;

interface GravitySeen {
  measured: MeasuredGravity;
  by: MemberId;
  /** How full the pail was, when it was measured with the reading. */
  volume?: Estimate<Millilitres>;
}

const estimate = ({ value, u95 }: MeasuredGravity): Estimate<Gravity> => ({ value, sd: u95 / coverage95 });

/** How far apart two values are, in standard deviations of their difference. */
const deviationsApart = (one: Estimate<number>, other: Estimate<number>): number =>
  Math.abs(one.value - other.value) / Math.hypot(one.sd, other.sd);

const withDriftPoint = (state: BucketState, measured: MeasuredGravity): BucketState => {
  const point = driftPoint(measured, state);
  return point ? { ...state, drift: [...(state.drift ?? []), point].slice(-mostDriftPoints) } : state;
};

/** The contents, if they are known, at this gravity; and of this volume, if that is known better. */
const contentsAt = (
  { contents, settings: { solids } }: BucketState,
  slurry: Estimate<Gravity>,
  volume?: Estimate<Millilitres>,
): Pick<BucketState, 'contents'> =>
  contents ? { contents: contentsFrom(volume ?? volumeOf(contents, solids), slurry, solids) } : {};

/** Starts the account at this reading: it is the first, or an unknown amount went in before it. */
const acceptReading = (next: BucketState, { measured }: GravitySeen): BucketState => {
  const { unexpected: _u, drift: _d, ...rest } = next;
  return withDriftPoint({ ...rest, ...contentsAt(next, estimate(measured)) }, measured);
};

const perLitre = <T extends number>(
  { value, u95 }: WithInterval<T>,
  ml: number,
  unit: (value: number) => T,
): WithInterval<T> => ({ value: unit((1000 * value) / ml), u95: (1000 * u95) / ml });

/**
 * Two readings agree with each other and not with the logbook: takes their value for the contents, and records what
 * explains the difference.
 */
const settleUnexpected = (
  next: BucketState,
  { measured: { at, seq }, by }: GravitySeen,
  { unexpected, expected, both }: { unexpected: Unexpected; expected: Contents; both: Contents },
): BucketState => {
  const { unexpected: _, efflux, look, ...rest } = next;
  const { solids: particleGravity } = next.settings;
  const now = gravityOf(both, particleGravity);
  const held = volumeOf(expected, particleGravity);
  const fell = now.value < gravityOf(expected, particleGravity).value;
  const { volume, volumeByFirst, ...explained } = explainChange(
    expected,
    {
      gravity: now,
      ...(unexpected.volumeKnown && unexpected.volumeSeen && { volume: volumeOf(both, particleGravity) }),
    },
    { fell, particleGravity, before: held },
  );
  const perDay =
    explained.what === 'water-out' && explained.orElse.includes('evaporation')
      ? evaporation(next.drift ?? [], { slurry: now.value, particleGravity, powder: powderIn(expected) })
      : undefined;
  const each = unexpected.volumeKnown && next.volumeAt !== undefined ? 'pail' : 'litre';
  const change: UnloggedChange = {
    ...explained,
    ...(perDay && { what: 'evaporation', orElse: [], perDay }),
    ...(each === 'litre' && explained.water && { water: perLitre(explained.water, held.value, millilitres) }),
    ...(each === 'litre' && explained.powder && { powder: perLitre(explained.powder, held.value, grams) }),
    each,
    from: unexpected.from,
    to: unexpected.to,
    found: { at, seq, by },
  };
  return {
    ...rest,
    // An earlier flow says nothing about what is in the pail now.
    ...(efflux && efflux.at >= unexpected.to.at && { efflux }),
    ...(look && look.at >= unexpected.to.at && { look }),
    // The drift line continues when the change is only evaporation; after any other change it starts anew.
    ...(next.drift && {
      drift: perDay ? next.drift : next.drift.filter((one) => one.at >= unexpected.to.at),
    }),
    ...contentsAt(next, now, unexpected.volumeKnown ? (perDay ? volumeByFirst : volume) : undefined),
    unlogged: [...(next.unlogged ?? []), change].slice(-mostChanges),
  };
};

/** A second reading after one that the logbook did not expect. */
const applySecondReading = (
  next: BucketState,
  unexpected: Unexpected,
  gone: number,
  seen: GravitySeen,
): BucketState => {
  const { measured } = seen;
  const { solids: particleGravity } = next.settings;
  const reading = estimate(measured);
  const expected = withDrift(unexpected.expected, gone, particleGravity);
  const before = next.contents ?? litreOf(next.believed ? estimate(next.believed) : reading, particleGravity);
  const first = withDrift(before, gone, particleGravity);
  const gravityIn = (contents: Contents) => gravityOf(contents, particleGravity);
  const fromLog = deviationsApart(reading, gravityIn(expected));
  const fromFirst = deviationsApart(reading, gravityIn(first));
  const both = withGravitySeen(first, reading, particleGravity);
  const agree = fromFirst <= surpriseDeviations && fromFirst <= fromLog;
  if (agree && deviationsApart(gravityIn(both), gravityIn(expected)) >= surpriseDeviations)
    return settleUnexpected(withDriftPoint(next, measured), seen, { unexpected, expected, both });
  if (!agree && fromLog > surpriseDeviations)
    return {
      ...withDriftPoint(next, measured),
      ...contentsAt(next, reading),
      unexpected: { ...unexpected, expected, to: { seq: measured.seq, at: measured.at } },
    };
  // The logbook was right and the first reading was off, or both are within its uncertainty.
  const { unexpected: _, ...rest } = next;
  const kept = (next.drift ?? []).filter(({ at }) => agree || at !== unexpected.to.at);
  const volume = volumeOf(first, particleGravity);
  const known = unexpected.volumeKnown
    ? unexpected.volumeSeen
      ? withVolumeSeen(expected, volume, particleGravity)
      : expected
    : contentsFrom(volume, gravityIn(expected), particleGravity);
  const contents = withGravitySeen(known, agree ? gravityIn(both) : reading, particleGravity);
  return withDriftPoint({ ...rest, drift: kept, ...(next.contents && { contents }) }, measured);
};

/**
 * Compares a believed gravity with what the logbook expects. `before` is the state before the reading, `next` the
 * state with everything else that the reading saw. A gravity that the logbook did not expect is accepted as it is,
 * until a second reading settles it.
 */
export const applyGravity = (before: BucketState, next: BucketState, seen: GravitySeen): BucketState => {
  const { believed, unknownSince } = before;
  const { measured, volume } = seen;
  const { solids: particleGravity } = next.settings;
  if (!believed || unknownSince.length > 0 || isAccountBroken(before)) return acceptReading(next, seen);
  const gone = since(believed.at, measured.at) / days(1);
  if (next.unexpected) return applySecondReading(next, next.unexpected, gone, seen);
  const reading = estimate(measured);
  const known = before.contents ?? litreOf(estimate(believed), particleGravity);
  const expected = withDrift(known, gone, particleGravity);
  const pointed = withDriftPoint(next, measured);
  if (deviationsApart(reading, gravityOf(expected, particleGravity)) <= surpriseDeviations) {
    const held = next.contents && withDrift(next.contents, gone, particleGravity);
    return { ...pointed, ...(held && { contents: withGravitySeen(held, reading, particleGravity) }) };
  }
  return {
    ...pointed,
    ...contentsAt(next, reading, volume),
    unexpected: {
      expected,
      from: { seq: believed.seq, at: believed.at },
      to: { seq: measured.seq, at: measured.at },
      volumeSeen: volume !== undefined,
      volumeKnown: before.contents !== undefined,
    },
  };
};
