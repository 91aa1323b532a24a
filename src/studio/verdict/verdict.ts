import type { Celsius, Gravity, Grams, Millilitres, Seconds } from '../../glaze/units.ts';
import type { FlowLook } from '../bucket/bucketEvent.ts';
import type { BucketCaution, BucketUse, Window } from '../settings/bucketSettings.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import type { Instant, Seq, StreamNo } from '../ids.ts';
import type { Chances } from '../belief/chances.ts';
import type { VoidedBy } from '../bucket/withVoid.ts';

export type Step =
  | 'on-hold'
  | 'sieve'
  | 'stir'
  | 'measure'
  | 'use'
  | 'add-water'
  | 'draw-off-water'
  | 'add-dry'
  | 'flocculate'
  | 'stir-on'
  | 'deflocculate'
  | 'ask-keeper';

/** What can be asked of somebody at a bucket. */
export type Asked = 'look' | 'seconds' | 'weight' | 'level';

export type GravityBand = 'low' | 'in' | 'high';
export type FlowBand = 'thin' | 'in' | 'thick' | 'unknown';

/** The rule that gave the step: the first that applied. */
export type RuleName =
  | 'retired'
  | 'on-hold'
  | 'cake'
  | 'never-sieved'
  | 'unsieved'
  | 'never-stirred'
  | 'rested'
  | 'added-since-stir'
  | 'spray-unsieved'
  | 'seconds-unknown'
  | 'seconds-off'
  | 'no-window-needed'
  | 'no-window'
  | 'never-measured'
  | 'void'
  | 'stale'
  | 'changed-unknown'
  | 'changed'
  | 'doubted'
  | 'unsure'
  | 'weigh-first'
  | 'stir-again'
  | 'unsettled'
  | 'grid';

/** What not to do now, as data; src/words has the sentences. */
export type Dont =
  | 'use'
  | 'use-unstirred'
  | 'adjust'
  | 'water-in'
  | 'water-out'
  | 'flocculant-to-hide-water'
  | 'water-to-thin-a-gel'
  | 'loosen-a-borate-gel'
  | 'water-on-looks'
  | 'powder-by-member'
  | 'all-at-once';

export type VerdictCaution =
  | Exclude<BucketCaution, 'children'>
  | 'drawn-water'
  | 'drawn-flux'
  | 'dust'
  | 'mixer'
  | 'lifting'
  | 'deflocculant'
  | 'hold-hazard'
  | 'spray';

/** One reason for the step, with its numbers. */
export type Reason =
  | { because: 'held'; hold: NonNullable<BucketState['hold']> }
  | { because: 'retired' }
  | { because: 'cake'; since: Instant }
  | { because: 'unsieved'; what: 'lumps' | 'skin' | 'frozen'; since: Instant; mesh: number | 'never' }
  /** `thawed`: it was stirred before it froze, which does not count. */
  | { because: 'never-stirred'; thawed?: true }
  | { because: 'rested'; at: Instant; hours: number; limitHours: number }
  | {
      because: 'rest-learned';
      limitHours: number;
      longestHours?: number;
      shortestHours?: number;
      gel: boolean;
    }
  /** `ahead`: dated later than this clock. */
  | { because: 'stirred'; at: Instant; hours: number; ahead?: true }
  | { because: 'thin-coat' }
  | { because: 'no-window' }
  | { because: 'never-measured' }
  | { because: 'void'; by: VoidedBy; at: Instant }
  | { because: 'unbelieved'; value: Gravity; at: Instant }
  | { because: 'stale'; at: Instant; days: number; limitDays: number }
  | { because: 'added-unknown'; count: number }
  | { because: 'moved'; by: number; u95: number }
  | { because: 'predicted'; value: Gravity; u95: number }
  | { because: 'unsure'; u95: number; window: Window<Gravity> }
  /**
   * Of 1; `both` is absent where no seconds are set. `weighed` when it was last weighed, `seenNow` when weight and flow
   * were read in this visit.
   */
  | { because: 'sure'; gravity: number; both?: number; weighed?: Instant; seenNow: boolean }
  | { because: 'weigh-first'; weighed?: Instant }
  /** So many readings by hydrometer, and none on a scale between: it may be off, and nobody would know. */
  | { because: 'scale-this-time'; readings: number }
  | { because: 'unsettled'; readings: number }
  | {
      because: 'gravity';
      band: GravityBand;
      value: Gravity;
      u95: number;
      window: Window<Gravity>;
      edge: boolean;
      at?: Instant;
    }
  /** `u95` once cup times of this bucket were repeated; `warmth` where it was not at 20 °C: what it would take there. */
  | {
      because: 'efflux';
      band: FlowBand;
      seconds: Seconds | 'wont-run';
      u95?: number;
      window: Window<Seconds>;
      cup: string;
      at?: Instant;
      warmth?: { temperature: Celsius; room: Celsius; seconds: Seconds };
    }
  /** It was timed in this visit, and that does not settle how it flows. */
  | { because: 'time-again' }
  | { because: 'efflux-no-window'; seconds: Seconds | 'wont-run'; cup: string }
  | { because: 'other-cup'; cup: string; windowCup: string }
  | { because: 'look'; look: FlowLook; at?: Instant }
  | { because: 'disagree'; efflux: FlowBand; look: FlowBand }
  /** Cup and finger contradict each other: neither is believed. */
  | { because: 'contradict'; efflux: FlowBand; look: FlowBand }
  | { because: 'flow-unknown' }
  | { because: 'flow-not-judged'; use: BucketUse }
  | { because: 'no-window-needed'; use: BucketUse }
  | { because: 'added-since-stir' }
  | { because: 'spray-unsieved'; at?: Instant; limitHours: number }
  /** What thickens a brushing or spraying glaze is its keeper's choice, and no flocculant. */
  | { because: 'own-thickener'; use: BucketUse }
  /** A dose went in and is still working; `stirred` when it was stirred in. */
  | { because: 'dose-at-work'; at: Instant; stirred: boolean }
  | { because: 'flow-at-rest'; at: Instant }
  /** `borneOut`: it counts all the same. */
  | { because: 'unexpected'; value: Gravity; u95: number; borneOut?: true }
  | { because: 'together'; count: number; value: Gravity; u95: number }
  | { because: 'stirred-short'; minutes?: number }
  | { because: 'stirred-long'; minutes: number }
  /** It was stirred long lately, and is thick again. */
  | { because: 'thick-again'; stirred: Instant }
  | { because: 'just-mixed' }
  | { because: 'no-way-to-look' }
  | { because: 'volume'; value: Millilitres; u95: number }
  | { because: 'volume-old'; at?: Instant }
  | { because: 'held-back'; wanted: number; safe: number }
  | { because: 'pail-full'; fits: Millilitres; wanted: Millilitres }
  | { because: 'no-room-for-dry'; fits: Grams; wanted: Grams }
  | { because: 'dose'; grams: Grams; percent: number; totalPercent: number }
  | { because: 'dose-learned'; low: Millilitres; high?: Millilitres }
  | { because: 'dose-no-change' }
  | { because: 'dose-checkpoint'; totalPercent: number }
  /** `each` is one drop of the jar in the pail, absent where nobody knows how full that is. */
  | { because: 'jar-test'; drops: number; most: number; each?: Millilitres; cold?: true }
  /** What a drop takes off the seconds, parts of 1, with its 90 % interval. */
  | { because: 'loosening-learned'; less: number; least: number; most: number }
  | { because: 'loosening-no-change' }
  | { because: 'loosening-checkpoint'; steps: number }
  /** A borate gel, which no deflocculant loosens for long. */
  | { because: 'gels-by-itself' };

/** Amounts for the step, to mid-window; also per litre, for a pail of unknown volume. */
export interface Amounts {
  waterMl?: Millilitres;
  drawOffMl?: Millilitres;
  dryGrams?: Grams;
  doseMl?: Millilitres;
  /** Drops of deflocculant to try in a jar first, and what they are in the pail. */
  jarDrops?: number;
  /** The glaze is cold: the jar is warmed first. */
  jarWarm?: true;
  deflocculantMl?: Millilitres;
  deflocculantMlPerLitre?: Millilitres;
  waterMlPerLitre?: Millilitres;
  drawOffMlPerLitre?: Millilitres;
  dryGramsPerLitre?: Grams;
  doseMlPerLitre?: Millilitres;
  /** What does not fit yet: it goes in after glaze was taken out. */
  waterMlLeft?: Millilitres;
}

export interface Verdict {
  step: Step;
  rule: RuleName;
  then?: Step;
  /** The step for a keeper, when a member is told to ask one. */
  keeperStep?: Step;
  /** What is wanted next, the best first; empty when nothing is. */
  asks: Asked[];
  /** How likely it is to be right; absent where a rule decided without asking. */
  chances?: Chances;
  gravity: { value: Gravity; u95: number; believed: boolean } | null;
  predicted: { value: Gravity; u95: number } | null;
  window: Window<Gravity> | null;
  flow: 'thin' | 'in' | 'thick' | null;
  gravityBand: GravityBand | null;
  hoursSinceStir: number | null;
  /** Stirred just now, with nothing added since: a reading taken now is believed. */
  readyToMeasure: boolean;
  amounts: Amounts;
  reasons: Reason[];
  dont: Dont[];
  cautions: VerdictCaution[];
  bucket: StreamNo;
  /** The bucket's last entry that the verdict is based on. */
  after: Seq;
}
