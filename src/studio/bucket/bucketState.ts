import type { Celsius, Gravity, Grams } from '../../glaze/units.ts';
import type { BucketEvent, CupTime, FlowLook, HoldCause } from './bucketEvent.ts';
import type { Belief } from '../belief/mixture.ts';
import type { BucketCaution, BucketSettings } from '../settings/bucketSettings.ts';
import type { Contents } from '../contents/contents.ts';
import type { DriftPoint } from '../contents/driftPoint.ts';
import type { Duration, Instant, MemberId, Seq, StreamNo } from '../ids.ts';
import type { VoidedBy } from './withVoid.ts';
import type { UnloggedChange, Unexpected } from '../contents/unloggedChange.ts';

/** A gravity that was measured, with its 95 % half-interval. */
export interface MeasuredGravity {
  value: Gravity;
  u95: number;
  at: Instant;
  seq: Seq;
}

/** How long a bucket stood up, by what was seen before it was stirred again. */
export interface Rests {
  /** The longest rest after which nothing had settled, and how many of more than the usual hour there were. */
  longest: Duration;
  count: number;
  /** The stir that the last of those began with: who looks at one rest thrice saw one. */
  counted?: Instant;
  /** The shortest after which there was clear water on top or a cake below. */
  shortest?: Duration;
}

/** How a stirred bucket flowed after so much flocculant. */
export interface FlowPoint extends CupTime {
  /** Doses since the remake, and the salt in it, in grams and in per cent of its dry mass then. */
  doses: number;
  salt: Grams;
  percent: number;
  gravity: Gravity;
}

/** A test tile as it was logged, its coat measured dry. */
export type TileDipped = Omit<Extract<BucketEvent, { kind: 'tile' }>, 'kind'> & { at: Instant };

/** What follows from a bucket's entries, undone ones left out. A cache: the entries are the truth. */
export interface BucketState {
  no: StreamNo;
  /** The latest `at` folded so far: a later entry may be added on; an earlier one asks for a refold. */
  foldedTo: Instant;
  /** The last entry of the stream, whatever its kind. */
  seq: Seq;
  settings: BucketSettings;
  retired: boolean;
  /** `seq` is the entry that put it on hold, or the last of several. */
  hold?: { cause: HoldCause; why: string; by: MemberId; since: Instant; seq?: Seq };
  /** Cautions that additions brought in, by entry; absent while there are none. */
  brought?: { seq: Seq; cautions: BucketCaution[] }[];
  /** Another glaze or a fresh batch went in, by this entry: no keeper has said since that it is the same as another bucket's. */
  apart?: Seq;
  cake?: { since: Instant };
  /** Lumps or a skin, seen and not sieved out since; or it froze, which makes lumps. */
  unsieved?: { what: 'lumps' | 'skin' | 'frozen'; since: Instant };
  /** What happened since the last believed reading that leaves it, and the flow, worth nothing. */
  voided?: { by: VoidedBy; at: Instant };
  sieved?: { at: Instant; mesh?: number };
  clearWater?: { since: Instant };
  /** The last stir that reached the bottom, how long it and those just before it took together, when a machine last beat air in, and whether something went in since. */
  stir?: { at: Instant; minutes?: number; mixedAt?: Instant; addedSince?: true };
  /** How long it stood up, and when it had settled; absent until somebody said. */
  rests?: Rests;
  /** The last reading taken on a bucket that was stirred to the bottom. */
  believed?: MeasuredGravity;
  /** A later reading that was kept but not believed. */
  unbelieved?: MeasuredGravity;
  /** Believed readings of one session that agree, taken together: weighing twice does better than once. */
  together?: { value: Gravity; u95: number; count: number };
  /** The last look at the flow that was kept but not believed, with none believed since. */
  restedFlow?: { at: Instant; flow?: CupTime };
  contents?: Contents;
  /** A believed reading that the logbook did not expect, until a second one settles it. */
  unexpected?: Unexpected;
  /** Changes that two readings agree on and nobody logged, the oldest first; absent while there are none. */
  unlogged?: UnloggedChange[];
  /** What logged additions have changed the grams of water to one of powder by, in all. */
  carried: number;
  /** Believed readings with what was logged taken out of them, for a slow drift; absent while there are none. */
  drift?: DriftPoint[];
  /** When somebody last said or measured how full the pail is. */
  volumeAt?: Instant;
  /** Gravity predicted from the logbook, carried without a volume when nothing but a reading is known. */
  predicted?: { value: Gravity; u95: number };
  /** How far the logged additions since the believed reading can have moved gravity. */
  moved: number;
  /** Entries since the believed reading that move gravity by an unknown amount. */
  unknownSince: Seq[];
  /** The last flow seen of a stirred bucket, by cup and by finger, and whether it was stirred on since. */
  efflux?: CupTime & { at: Instant; temperature?: Celsius; stirredSince?: true };
  look?: { look: FlowLook; at: Instant; stirredSince?: true };
  /** The last test tiles; absent while there are none. */
  tiles?: TileDipped[];
  /** What is believed of its gravity and flow, and how surely, as of the last entry that bears on them. */
  belief: Belief;
  /** Salt since the last remake, counted, never observed. */
  flocculant: {
    heptahydrate: Grams;
    doses: number;
    lastAt?: Instant;
    /** The first stir since the last dose. */
    stirredIn?: Instant;
    unknown: boolean;
    /** How it flowed after each of the last doses; absent until there is a look. */
    flow?: FlowPoint[];
  };
}
