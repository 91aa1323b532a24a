import { secondForBlend } from '../glaze/massBalance.ts';
import { coverage95 } from '../glaze/uncertainty.ts';
import { millilitres, type Gravity, type Millilitres } from '../glaze/units.ts';
import { middle, type Correction } from './amounts.ts';
import type { BucketState, Contents } from './bucketState.ts';
import { contentsFrom, gravityOf, volumeOf, waterGramsPerMl, withAdded, type Estimate } from './contents.ts';
import type { Instant } from './ids.ts';
import { litreAmount, pailAmount, type WaterOrPowder } from './pailAmounts.ts';
import { facts, rules, type Facts } from './rules.ts';
import { safeAmount } from './safeAmount.ts';
import type { Amounts, GravityBand, Reason, RuleName } from './verdict.ts';
import { volumeNow } from './volumeNow.ts';
import { pouredWithin, weighedWithin } from './withAddition.ts';

export const correctionWays = ['water', 'draw-off', 'dry', 'blend'] as const;
export type CorrectionWay = (typeof correctionWays)[number];

/** Gravity to expect of the next reading, with its 95 % half-interval, and how full the pail is then. */
export interface Expected {
  gravity: Gravity;
  u95: number;
  volume: Millilitres;
}

export type Corrected =
  /** Nobody can say what it needs before something else is done. */
  | { kind: 'blocked'; rule: RuleName }
  | { kind: 'in-window'; measured: NonNullable<Facts['measured']> }
  /** Water for one that is low, dry batch for one that is high. */
  | { kind: 'wrong-way'; band: Exclude<GravityBand, 'in'> }
  /** A gel never settles: there is no clear water to draw off. */
  | { kind: 'gel' }
  | { kind: 'beyond-powder'; solids: Gravity }
  | { kind: 'needs-volume'; other: boolean }
  | { kind: 'other-unmeasured' }
  | { kind: 'other-cannot'; other: Gravity; wanted: Gravity }
  | {
      kind: 'amounts';
      measured: NonNullable<Facts['measured']>;
      /** To do before: a stir, or a sieve and a stir. */
      first: ('sieve' | 'stir')[];
      half: boolean;
      amounts: Amounts & { blendMl?: Millilitres };
      reasons: Reason[];
      expected?: Expected;
    };

/** Rules that ask for a new reading, or for hands off, before any amount is right. */
const readied: ReadonlySet<RuleName> = new Set(['never-stirred', 'rested', 'unsieved']);

const poured = (ml: number): Estimate<number> => ({
  value: ml * waterGramsPerMl,
  sd: Math.abs(ml) * waterGramsPerMl * pouredWithin,
});

const expectedOf = (contents: Contents, solids: Gravity, readingU95: number): Expected => {
  const after = gravityOf(contents, solids);
  return {
    gravity: after.value,
    u95: Math.hypot(coverage95 * after.sd, readingU95),
    volume: volumeOf(contents, solids).value,
  };
};

const afterAmounts = (c: Correction, { waterMl, drawOffMl, dryGrams }: Amounts): Expected => {
  const before = contentsFrom(c.volume, { value: c.from.value, sd: c.from.u95 / coverage95 }, c.solids);
  const powder = { value: dryGrams ?? 0, sd: (dryGrams ?? 0) * weighedWithin };
  return expectedOf(
    withAdded(before, poured((waterMl ?? 0) - (drawOffMl ?? 0)), powder),
    c.solids,
    c.from.u95,
  );
};

/** How much of another bucket brings this one to mid-window, as far as it is safe, fits, and is there. */
const byBlending = (
  c: Correction,
  pail: Millilitres | undefined,
  other: BucketState,
  now: Instant,
): Pick<Extract<Corrected, { kind: 'amounts' }>, 'amounts' | 'reasons' | 'expected'> | Corrected => {
  const held = volumeNow(other, now);
  if (!held) return { kind: 'needs-volume', other: true };
  const theirs = other.predicted ?? other.believed;
  if (!theirs || other.unknownSince.length > 0) return { kind: 'other-unmeasured' };
  const wanted = secondForBlend({
    first: { volume: c.volume.value, gravity: c.from.value },
    secondGravity: theirs.value,
    target: middle(c.window),
  });
  if (!wanted.ok) return { kind: 'other-cannot', other: theirs.value, wanted: middle(c.window) };
  const far = theirs.value > c.from.value ? c.window.high : c.window.low;
  const distance = { value: Math.abs(far - c.from.value), sd: c.from.u95 / coverage95 };
  const safe = safeAmount(wanted.value, c.volume, distance, Math.max(0, Math.abs(theirs.value - far)));
  const room = pail === undefined ? Infinity : Math.max(0, pail - c.volume.value);
  const blendMl = millilitres(Math.min(safe, held.value, room));
  const sd = theirs.u95 / coverage95;
  const mine = contentsFrom(c.volume, { value: c.from.value, sd: c.from.u95 / coverage95 }, c.solids);
  const into = contentsFrom(
    { value: blendMl, sd: blendMl * pouredWithin },
    { value: theirs.value, sd },
    c.solids,
  );
  const together = withAdded(
    mine,
    { value: into.water, sd: Math.sqrt(into.covariance.waterWater) },
    { value: into.solids, sd: Math.sqrt(into.covariance.solidsSolids) },
    into.covariance.waterSolids,
  );
  return {
    amounts: { blendMl },
    reasons: [
      ...(safe < wanted.value * 0.99 ? [{ because: 'held-back' as const, wanted: wanted.value, safe }] : []),
      ...(room < Math.min(safe, held.value)
        ? [{ because: 'pail-full' as const, fits: millilitres(room), wanted: millilitres(safe) }]
        : []),
    ],
    expected: expectedOf(together, c.solids, c.from.u95),
  };
};

const amountFor = (way: Exclude<CorrectionWay, 'blend'>, thick: boolean): WaterOrPowder =>
  way === 'water' && thick ? 'half-water' : way;

/** From where a bucket is to mid-window by one way: the same numbers that the verdict gives. */
export const correctBucket = (
  state: BucketState,
  { way, now, other }: { way: CorrectionWay; now: Instant; other?: BucketState },
): Corrected => {
  const f = facts(state, now);
  const standing = rules.filter(({ applies }) => applies(f)).map(({ name }) => name);
  const blocked = standing.find((name) => !readied.has(name));
  if (blocked) return { kind: 'blocked', rule: blocked };
  const { measured } = f;
  const { gravity: window, solids, pail } = state.settings;
  if (!measured || !window) return { kind: 'blocked', rule: 'never-measured' };
  if (measured.band === 'in') return { kind: 'in-window', measured };
  const wrong = measured.band === 'low' ? way === 'water' : way === 'draw-off' || way === 'dry';
  if (wrong) return { kind: 'wrong-way', band: measured.band };
  const thick = f.flow.band === 'thick';
  if (way === 'draw-off' && thick) return { kind: 'gel' };
  if (way === 'dry' && middle(window) >= solids) return { kind: 'beyond-powder', solids };
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
  const unfilled = { from: measured, window, solids };
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
