import type { Celsius, Gravity, Grams } from '../../glaze/units.ts';
import type { CupTime, FlowLook, HoldCause, BucketEventOf } from './bucketEvent.ts';
import type { Belief } from '../belief/mixture.ts';
import type { BucketCaution, BucketSettings } from '../settings/bucketSettings.ts';
import type { Contents } from '../contents/contents.ts';
import type { DriftPoint } from '../contents/driftPoint.ts';
import type { Duration, Instant, MemberId, Seq, StreamNo } from '../ids.ts';
import type { VoidedBy } from './withVoid.ts';
import type { UnloggedChange, Unexpected } from '../contents/unloggedChange.ts';

export interface MeasuredGravity {
  value: Gravity;
  u95: number;
  at: Instant;
  seq: Seq;
}

/** How long a bucket stayed in suspension, from what was seen before each stir. */
export interface Rests {
  /** The longest rest after which nothing had settled, and how many such rests were longer than the usual hour. */
  longest: Duration;
  count: number;
  /** The stir that began the last of those rests: several looks at one rest count once. */
  counted?: Instant;
  /** The shortest rest after which there was clear water on top or a cake below. */
  shortest?: Duration;
}

/** How a stirred bucket flowed at a known amount of flocculant. */
export interface FlowPoint extends CupTime {
  /** Doses since the remake, and the salt then: in grams, and in per cent of the dry mass. */
  doses: number;
  salt: Grams;
  percent: number;
  gravity: Gravity;
}

/** How a stirred bucket flowed at a known amount of deflocculant, in steps since the last fresh batch. */
export interface LoosenPoint extends CupTime {
  doses: number;
  steps: number;
  gravity: Gravity;
}

/** A test tile as it was logged; its coat was measured dry. */
export type TileDipped = Omit<BucketEventOf<'tile'>, 'kind'> & { at: Instant };

/** What a bucket's entries add up to, without those that were undone. A cache: the entries are the source of truth. */
export interface BucketState {
  no: StreamNo;
  /** The latest `at` folded so far. A later entry can be applied on top; an earlier one needs a refold. */
  foldedTo: Instant;
  /** The seq of the last entry in the stream, of whatever kind. */
  seq: Seq;
  settings: BucketSettings;
  retired: boolean;
  /** `seq` is the entry that put it on hold; with several, the last. */
  hold?: { cause: HoldCause; why: string; by: MemberId; since: Instant; seq?: Seq };
  /** Cautions that additions brought in, by entry; absent when there are none. */
  brought?: { seq: Seq; cautions: BucketCaution[] }[];
  /**
   * The entry by which another glaze or a fresh batch went in. No keeper has said since that it is still the same
   * glaze as another bucket's.
   */
  apart?: Seq;
  cake?: { since: Instant };
  /** Lumps or a skin that were not sieved out since; or it froze, which makes lumps. */
  unsieved?: { what: 'lumps' | 'skin' | 'frozen'; since: Instant };
  /** The last event since the believed reading that makes the reading and the flow invalid. */
  voided?: { by: VoidedBy; at: Instant };
  sieved?: { at: Instant; mesh?: number };
  clearWater?: { since: Instant };
  /**
   * The last stir to the bottom: when, how long (with those just before it), when a machine last beat air in, when it was
   * last stirred long enough to loosen a gel, and whether something went in since.
   */
  stir?: { at: Instant; minutes?: number; mixedAt?: Instant; longAt?: Instant; addedSince?: true };
  /** How long it stayed in suspension, and when it had settled; absent until somebody said. */
  rests?: Rests;
  /** The last reading that was taken right after a stir to the bottom. */
  believed?: MeasuredGravity;
  /** A later reading that was logged but not believed. */
  unbelieved?: MeasuredGravity;
  /** The mean of the believed readings of one session that agree: it is more exact than one. */
  together?: { value: Gravity; u95: number; count: number };
  /** The last flow that was logged but not believed, when none was believed since. */
  restedFlow?: { at: Instant; flow?: CupTime };
  /** Readings by hydrometer since it was last weighed on a scale; absent when there are none. */
  byHydrometer?: number;
  contents?: Contents;
  /** A believed reading that the logbook did not expect and no second reading has settled. */
  unexpected?: Unexpected;
  /** Changes that nobody logged and two readings agree on, oldest first; absent when there are none. */
  unlogged?: UnloggedChange[];
  /** The sum of the changes that logged additions made to the ratio of water to powder. */
  carried: number;
  /**
   * Water-to-powder ratios of believed readings, less the logged changes, to find a slow drift; absent when there are
   * none.
   */
  drift?: DriftPoint[];
  /** When the volume was last said or measured. */
  volumeAt?: Instant;
  /** The gravity that the logbook predicts; it needs no volume, so it is there when only a reading is known. */
  predicted?: { value: Gravity; u95: number };
  /** The most that the logged additions since the believed reading can have moved gravity. */
  moved: number;
  /** Entries since the believed reading that move gravity by an unknown amount. */
  unknownSince: Seq[];
  /** The last flow of a stirred bucket, by cup and by finger, and whether it was stirred again since. */
  efflux?: CupTime & { at: Instant; temperature?: Celsius; stirredSince?: true };
  look?: { look: FlowLook; at: Instant; stirredSince?: true };
  /** The last test tiles; absent when there are none. */
  tiles?: TileDipped[];
  /** What is believed of its gravity and flow, and how surely, as of the last entry that bears on them. */
  belief: Belief;
  /** Salt since the last remake, added up from the doses, never measured. */
  flocculant: {
    heptahydrate: Grams;
    doses: number;
    lastAt?: Instant;
    /** The first stir since the last dose. */
    stirredIn?: Instant;
    unknown: boolean;
    /** How it flowed after each of the last doses; absent until somebody tested it. */
    flow?: FlowPoint[];
  };
  /** Deflocculant since the last remake, in steps of a drop in 250 ml; absent until some went in. */
  deflocculant?: {
    steps: number;
    doses: number;
    flow?: LoosenPoint[];
    /** The steps that were in when it last ran right. */
    right?: number;
  };
}
