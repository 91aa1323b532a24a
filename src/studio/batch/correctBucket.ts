import { secondForBlend } from '../../glaze/slurry/massBalance.ts';
import { coverage95 } from '../../glaze/statistics/normal.ts';
import { millilitres, type Gravity, type Millilitres } from '../../glaze/units.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import {
  type Contents,
  contentsFrom,
  gravityOf,
  volumeOf,
  waterGramsPerMl,
  withAdded,
  type Estimate,
} from '../contents/contents.ts';
import type { Instant } from '../ids.ts';
import {
  litreAmount,
  middle,
  pailAmount,
  type Correction,
  type WaterOrPowder,
} from '../verdict/pailAmounts.ts';
import { headroom, usablePart } from '../verdict/headroom.ts';
import { facts, type Facts } from '../verdict/facts.ts';
import { gravityForAmounts, surenessOf } from '../verdict/chooseByChance.ts';
import { rules } from '../verdict/rules.ts';
import { whyWeigh } from '../verdict/whyWeigh.ts';
import { safeAmount } from '../verdict/safeAmount.ts';
import type { Amounts, GravityBand, Reason, RuleName } from '../verdict/verdict.ts';
import { withoutFlagged } from '../bucket/withoutFlagged.ts';
import { volumeNow } from '../bucket/volumeNow.ts';
import { pouredWithin, weighedWithin } from '../bucket/fold/applyAddition.ts';

export const correctionWays = ['water', 'draw-off', 'evaporate', 'dry', 'blend'] as const;
export type CorrectionWay = (typeof correctionWays)[number];

/** The gravity to expect of the next reading, with its 95 % half-interval, and how full the pail will be. */
export interface Expected {
  gravity: Gravity;
  u95: number;
  volume: { value: Millilitres; u95: number };
}

/** The amounts for one way of correcting; blending may have to make room first. */
export interface CorrectionAmounts extends Amounts {
  blendMl?: Millilitres;
  /** Glaze to take out first, so that the pail can still be stirred. */
  ladleMl?: Millilitres;
  /** What fits without taking glaze out; it is not enough. */
  fitsMl?: Millilitres;
}

export type Corrected =
  /** Something else has to be done before an amount can be worked out. */
  | { kind: 'blocked'; rule: RuleName }
  | { kind: 'in-window'; measured: NonNullable<Facts['measured']> }
  /** Water cannot correct a low gravity, nor dry batch a high one. */
  | { kind: 'wrong-way'; band: Exclude<GravityBand, 'in'> }
  /** A gel does not settle: it has no clear water to draw off. */
  | { kind: 'gel' }
  | { kind: 'beyond-powder'; particleGravity: Gravity }
  | { kind: 'needs-volume'; other: boolean }
  | { kind: 'other-unmeasured' }
  | { kind: 'other-cannot'; other: Gravity; wanted: Gravity }
  | {
      kind: 'amounts';
      measured: NonNullable<Facts['measured']>;
      /** To do first: a stir, or a sieve and a stir. */
      first: ('sieve' | 'stir')[];
      half: boolean;
      amounts: CorrectionAmounts;
      reasons: Reason[];
      expected?: Expected;
      /** Why it stays outside its window: the other bucket is empty then, or more would not be safe. */
      falls?: 'other-empty' | 'held-back';
    };

export type CorrectionFound = Extract<Corrected, { kind: 'amounts' }>;

/** Rules that ask for a stir, a sieve or a new reading before an amount is right. */
const rulesBeforeAmounts: ReadonlySet<RuleName> = new Set(['never-stirred', 'rested', 'unsieved']);

const pouredVolume = (ml: number): Estimate<number> => ({
  value: ml * waterGramsPerMl,
  sd: Math.abs(ml) * waterGramsPerMl * pouredWithin,
});

const expectedOf = (contents: Contents, particleGravity: Gravity, readingU95: number): Expected => {
  const after = gravityOf(contents, particleGravity);
  const volume = volumeOf(contents, particleGravity);
  return {
    gravity: after.value,
    u95: Math.hypot(coverage95 * after.sd, readingU95),
    volume: { value: volume.value, u95: coverage95 * volume.sd },
  };
};

const afterAmounts = (c: Correction, { waterMl, drawOffMl, dryGrams }: Amounts): Expected => {
  const before = contentsFrom(
    c.volume,
    { value: c.from.value, sd: c.from.u95 / coverage95 },
    c.particleGravity,
  );
  const powder = { value: dryGrams ?? 0, sd: (dryGrams ?? 0) * weighedWithin };
  return expectedOf(
    withAdded(before, pouredVolume((waterMl ?? 0) - (drawOffMl ?? 0)), powder),
    c.particleGravity,
    c.from.u95,
  );
};

/** The result of ladling some out and pouring some of another bucket in. */
const afterBlend = (
  c: Correction,
  other: { value: Gravity; u95: number },
  { blendMl, ladleMl }: { blendMl: number; ladleMl: number },
): Expected => {
  const left = {
    value: millilitres(c.volume.value - ladleMl),
    sd: Math.hypot(c.volume.sd, ladleMl * pouredWithin),
  };
  const mine = contentsFrom(left, { value: c.from.value, sd: c.from.u95 / coverage95 }, c.particleGravity);
  const into = contentsFrom(
    { value: millilitres(blendMl), sd: blendMl * pouredWithin },
    { value: other.value, sd: other.u95 / coverage95 },
    c.particleGravity,
  );
  const together = withAdded(
    mine,
    { value: into.water, sd: Math.sqrt(into.covariance.waterWater) },
    { value: into.solids, sd: Math.sqrt(into.covariance.solidsSolids) },
    into.covariance.waterSolids,
  );
  return expectedOf(together, c.particleGravity, c.from.u95);
};

/** How much to ladle out, so that the rest and what comes from the other bucket fill the usable part of the pail. */
const makeRoom = (volume: number, pail: number, safe: number, held: number) => {
  const share = safe / volume;
  const usable = usablePart * pail;
  const even = usable / (1 + share);
  const kept = share * even <= held ? even : usable - held;
  return { blendMl: Math.min(share * kept, held), ladleMl: volume - kept };
};

/** How much of another bucket brings this one to mid-window, as far as it is safe, is there, and fits with room to stir. */
const byBlending = (
  c: Correction,
  pail: Millilitres | undefined,
  other: BucketState,
  now: Instant,
): Pick<CorrectionFound, 'amounts' | 'reasons' | 'expected' | 'falls'> | Corrected => {
  const held = volumeNow(other, now);
  if (!held) return { kind: 'needs-volume', other: true };
  const counted = withoutFlagged(other);
  const theirs = counted.predicted ?? counted.believed;
  if (!theirs || other.voided || other.unknownSince.length > 0) return { kind: 'other-unmeasured' };
  const wanted = secondForBlend({
    first: { volume: c.volume.value, gravity: c.from.value },
    secondGravity: theirs.value,
    target: middle(c.window),
  });
  if (!wanted.ok) return { kind: 'other-cannot', other: theirs.value, wanted: middle(c.window) };
  const far = theirs.value > c.from.value ? c.window.high : c.window.low;
  const distance = { value: Math.abs(far - c.from.value), sd: c.from.u95 / coverage95 };
  const safe = safeAmount(wanted.value, c.volume, distance, Math.max(0, Math.abs(theirs.value - far)));
  const room = pail === undefined ? Infinity : headroom(pail, c.volume.value);
  const isInside = ({ gravity }: Expected) => gravity >= c.window.low && gravity <= c.window.high;
  const asIs = { blendMl: Math.min(safe, held.value, room), ladleMl: 0 };
  const asItIs = afterBlend(c, theirs, asIs);
  const needsRoom = pail !== undefined && room < Math.min(safe, held.value) && !isInside(asItIs);
  const pour = needsRoom ? makeRoom(c.volume.value, pail, safe, held.value) : asIs;
  const expected = needsRoom ? afterBlend(c, theirs, pour) : asItIs;
  return {
    amounts: {
      blendMl: millilitres(pour.blendMl),
      ...(needsRoom && { ladleMl: millilitres(pour.ladleMl), fitsMl: millilitres(room) }),
    },
    reasons: safe < wanted.value * 0.99 ? [{ because: 'held-back', wanted: wanted.value, safe }] : [],
    expected,
    ...(!isInside(expected) && { falls: held.value < safe ? 'other-empty' : 'held-back' }),
  };
};

const amountFor = (way: Exclude<CorrectionWay, 'blend'>, thick: boolean): WaterOrPowder =>
  way === 'water' && thick ? 'half-water' : way === 'evaporate' ? 'draw-off' : way;

/** How to bring a bucket to mid-window by one way, with the amounts that its verdict gives. */
export const correctBucket = (
  read: BucketState,
  { way, now, other }: { way: CorrectionWay; now: Instant; other?: BucketState },
): Corrected => {
  const state = withoutFlagged(read);
  const f = facts(state, now);
  const standing = [...rules, ...whyWeigh].filter((rule) => rule.because(f)).map(({ name }) => name);
  const blocked = standing.find((name) => !rulesBeforeAmounts.has(name));
  if (blocked) return { kind: 'blocked', rule: blocked };
  const measured = f.measured && gravityForAmounts(f.measured, surenessOf(f.state, f.now));
  const { gravity: window, solids: particleGravity, pail } = state.settings;
  if (!measured || !window) return { kind: 'blocked', rule: 'never-measured' };
  if (measured.band === 'in') return { kind: 'in-window', measured };
  const wrong = measured.band === 'low' ? way === 'water' : way !== 'water' && way !== 'blend';
  if (wrong) return { kind: 'wrong-way', band: measured.band };
  const thick = f.flow.band === 'thick';
  if (way === 'draw-off' && thick) return { kind: 'gel' };
  if (way === 'dry' && middle(window) >= particleGravity) return { kind: 'beyond-powder', particleGravity };
  const common = {
    kind: 'amounts' as const,
    measured,
    first: [
      ...(standing.includes('unsieved') ? (['sieve'] as const) : []),
      ...(standing.length > 0 ? (['stir'] as const) : []),
    ],
    half: way === 'water' && thick,
  };
  const volume = volumeNow(state, now);
  const unfilled = { from: measured, window, particleGravity };
  if (way === 'blend') {
    if (!volume) return { kind: 'needs-volume', other: false };
    if (!other) return { kind: 'other-unmeasured' };
    const found = byBlending({ ...unfilled, volume }, pail, other, now);
    return 'kind' in found ? found : { ...common, ...found };
  }
  const amount = amountFor(way, thick);
  if (!volume) return { ...common, amounts: litreAmount(amount, unfilled), reasons: [] };
  const c = { ...unfilled, volume };
  const found = pailAmount(amount, c, pail);
  return { ...common, ...found, expected: afterAmounts(c, found.amounts) };
};
