import type { BucketEntry, BucketEvent } from '../../src/studio/bucket/bucketEvent.ts';
import { flowCup } from '../../src/glaze/flow/flowCup.ts';
import { dryContent } from '../../src/glaze/slurry/slurry.ts';
import { grams, gravity, millilitres, seconds } from '../../src/glaze/units.ts';
import type { BucketState } from '../../src/studio/bucket/bucketState.ts';
import {
  saltInSaturatedSolution,
  saturatedSolutionWith,
} from '../../src/studio/bucket/flocculantSolution.ts';
import { applyToBucket, foldBucket } from '../../src/studio/bucket/fold/foldBucket.ts';
import { days, entryId, instant, memberId, minutes, later, seq, streamNo } from '../../src/studio/ids.ts';
import { nextDose, doseStepOfDry, type NextDose } from '../../src/studio/dose/nextDose.ts';
import { volumeNow } from '../../src/studio/bucket/volumeNow.ts';

/** Repeatable numbers in (0, 1) (Lehmer's generator, Park & Miller 1988). */
export const chances = (seed: number) => {
  let state = (seed % 2147483646) + 1;
  const next = () => {
    state = (state * 48271) % 2147483647;
    return state / 2147483647;
  };
  const normal = () => Math.sqrt(-2 * Math.log(next())) * Math.cos(2 * Math.PI * next());
  return { next, normal };
};

const window = { low: 12, high: 16 };
/** The time that water takes through Ford #4, by its equation at 1 mm²/s. */
const { slope, offset } = flowCup('ford4');
const water = offset + 1 / slope;
const midGravity = 1.44;

/** The true properties of a simulated bucket, which the bot cannot see. */
export interface Truth {
  /** ln(t − t of water) without flocculant; its slope in dose steps and in gravity. */
  level: number;
  perRung: number;
  perGravity: number;
  volumeMl: number;
  gravity: number;
  /** Repeatability of a reading: its relative standard deviation. */
  repeat: number;
}

/** A set of buckets: the effect of a dose step in the median one, and the repeatability of its members' readings. */
export interface Room {
  name: string;
  perRung: number;
  repeat: readonly [low: number, high: number];
}

/** A random bucket, not drawn from the bot's own prior. */
export const someTruth = (
  { next, normal }: ReturnType<typeof chances>,
  { perRung, repeat: [least, most] }: Room,
): Truth => ({
  level: Math.log((window.low - water) * (0.3 + 0.5 * next())),
  perRung: perRung * Math.exp(0.4 * normal()),
  perGravity: 6 + 3 * normal(),
  volumeMl: 15_000 * (1 + 0.05 * normal()),
  gravity: midGravity + 0.006 * normal(),
  repeat: least + (most - least) * next(),
});

const dryTruth = ({ volumeMl, gravity: value }: Truth): number => {
  const dry = dryContent({ slurry: gravity(value), particleGravity: gravity(2.6) });
  if (!dry.ok) throw new Error('no dry content');
  return (dry.value * volumeMl) / 1000;
};

const logOver = (truth: Truth, saltGrams: number, slurry: number): number =>
  truth.level +
  (truth.perRung * saltGrams) / (dryTruth(truth) * doseStepOfDry) +
  truth.perGravity * (slurry - midGravity);

/** Solution that the bucket still needs to reach mid-window, in ml; negative if it is past that. */
export const stillNeeded = (truth: Truth, saltGrams: number): number => {
  const middle = Math.log((window.low + window.high) / 2 - water);
  const rungs = (middle - logOver(truth, saltGrams, truth.gravity)) / truth.perRung;
  const grammes = rungs * doseStepOfDry * dryTruth(truth);
  return Math.sign(grammes) * saturatedSolutionWith(grams(Math.abs(grammes)));
};

/** A simulated bucket whose member follows the bot's advice. */
export class SimulatedBucket {
  readonly truth: Truth;
  readonly #noise: ReturnType<typeof chances>;
  #salt = 0;
  #now = instant(Date.UTC(2026, 2, 1, 12));
  #seq = 0;
  #state: BucketState;

  constructor(truth: Truth, seed: number) {
    this.truth = truth;
    this.#noise = chances(seed);
    const opened = foldBucket(streamNo(1), [
      this.#entry({
        kind: 'setup',
        volume: millilitres(15_000),
        settings: {
          name: 'Simulated',
          use: 'dipping',
          gravity: { low: gravity(1.42), high: gravity(1.46) },
          efflux: { low: seconds(window.low), high: seconds(window.high) },
          cup: 'ford4',
          solids: gravity(2.6),
          restLimit: days(1),
          shelfLife: days(7),
          mesh: 80,
          cautions: [],
        },
      }),
    ]);
    if (!opened) throw new Error('a setup opens a bucket');
    this.#state = opened;
  }

  get salt(): number {
    return this.#salt;
  }

  get state(): BucketState {
    return this.#state;
  }

  /** Stirs, weighs and times the bucket; returns the logged seconds. */
  read(): number {
    const { truth } = this;
    const over = Math.exp(logOver(truth, this.#salt, truth.gravity));
    const time = (water + over) * (1 + truth.repeat * this.#noise.normal());
    const logged = Math.max(water + 0.3, Math.round(10 * time) / 10);
    const read = Math.round(1000 * (truth.gravity + 0.004 * this.#noise.normal())) / 1000;
    this.#log({
      kind: 'reading',
      gravity: { value: gravity(read), u95: 0.01, by: 'weight' },
      flow: { cup: 'ford4', kind: 'ford4', seconds: logged > 100 ? 'wont-run' : seconds(logged) },
      stirred: true,
      seen: [],
    });
    return logged;
  }

  next(): NextDose {
    const slurry = this.#state.believed?.value;
    if (slurry === undefined) throw new Error('it was not read');
    return nextDose(this.#state, slurry, volumeNow(this.#state, this.#now)?.value);
  }

  /** The ladder's dose step, ignoring what was learned. */
  rungMl(): number {
    const next = this.next();
    return next.kind === 'dose' ? (next.dose * 100 * doseStepOfDry) / next.percent : 0;
  }

  dose(ml: number): void {
    this.#salt += saltInSaturatedSolution(millilitres(ml));
    this.#log({ kind: 'addition', added: { what: 'flocculant', volume: millilitres(ml) } });
  }

  #entry(event: BucketEvent): BucketEntry {
    this.#now = later(this.#now, minutes(12));
    const place = seq(++this.#seq);
    const stream = streamNo(1);
    return {
      id: entryId(stream, place),
      stream,
      seq: place,
      at: this.#now,
      loggedAt: this.#now,
      by: memberId('simulated'),
      event,
    };
  }

  #log(event: BucketEvent): void {
    this.#state = applyToBucket(this.#state, this.#entry(event));
  }
}

export interface Walk {
  doses: number;
  reached: boolean;
  /** Whether it ends too thick by its true flow, not by its readings. */
  tooThick: boolean;
  /** The largest total dose, as it was logged. */
  mostPercent: number;
  stopped?: 'checkpoint' | 'no-change';
  /** Each learned proposal with the true need. */
  proposals: { low: number; high: number | undefined; needed: number; ml: number; rungMl: number }[];
}

/** Doses one bucket until a reading is in the window, by the ladder or by the learned dose. */
export const walk = (truth: Truth, seed: number, by: 'ladder' | 'learned'): Walk => {
  const bucket = new SimulatedBucket(truth, seed);
  const proposals: Walk['proposals'] = [];
  let mostPercent = 0;
  const end = (doses: number, reached: boolean, stopped?: Walk['stopped']): Walk => ({
    doses,
    reached,
    tooThick: Math.exp(logOver(truth, bucket.salt, truth.gravity)) > window.high - water,
    mostPercent,
    ...(stopped && { stopped }),
    proposals,
  });
  for (let doses = 0; ; doses++) {
    if (bucket.read() >= window.low) return end(doses, true);
    const next = bucket.next();
    if (next.kind === 'checkpoint' || next.kind === 'no-change') return end(doses, false, next.kind);
    if (next.kind !== 'dose') throw new Error('its volume was forgotten');
    if (next.interval)
      proposals.push({
        low: next.interval.low,
        high: next.interval.high,
        needed: stillNeeded(truth, bucket.salt),
        ml: next.dose,
        rungMl: bucket.rungMl(),
      });
    const ml = by === 'ladder' ? bucket.rungMl() : next.dose;
    mostPercent = Math.max(mostPercent, next.totalPercent + (next.percent * ml) / next.dose);
    bucket.dose(ml);
  }
};
