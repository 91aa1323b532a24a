import type { FlowCupKind } from '../glaze/flowCup.ts';
import type { Celsius, Gravity, Grams, Millilitres, Millimetres, Seconds } from '../glaze/units.ts';
import type { Duration, EntryId, Instant, MemberId, Seq, StreamNo } from './ids.ts';

export interface Window<T> {
  low: T;
  high: T;
}

/** A pail as a cone cut off, inside measures. */
export interface PailShape {
  bottom: Millimetres;
  top: Millimetres;
  height: Millimetres;
}

export const bucketUses = ['dipping', 'brushing', 'spraying', 'test'] as const;
export type BucketUse = (typeof bucketUses)[number];

export const bucketCautions = [
  'gloves',
  'caustic',
  'toxic',
  'barium',
  'manganese',
  'nickel',
  'chrome',
  'cobalt',
  'copper',
  'boron',
  'lithium',
  'vanadium',
  'lead',
  'cadmium',
  'children',
] as const;
export type BucketCaution = (typeof bucketCautions)[number];

export interface BucketSettings {
  name: string;
  nick?: string;
  use: BucketUse;
  /** What the pail holds to the rim. */
  pail?: Millilitres;
  shape?: PailShape;
  gravity?: Window<Gravity>;
  efflux?: Window<Seconds>;
  /** The cup that the efflux window was set with: a standard kind, or the name of one of the studio's own. */
  cup?: string;
  /** Gravity of the dry powder. */
  solids: Gravity;
  /** How long after a stir the bucket may be used without another. */
  restLimit: Duration;
  /** How long a believed reading is good for. */
  shelfLife: Duration;
  mesh: number | 'never';
  cautions: BucketCaution[];
  recipe?: string;
  /** The pails of one glaze carry its name in common, each with its own state. */
  glaze?: string;
}

export const flowLooks = ['thin', 'right', 'thick'] as const;
export type FlowLook = (typeof flowLooks)[number];

export const sights = ['clear-water', 'cake', 'lumps', 'skin', 'cake-gone', 'none'] as const;
export type Sight = (typeof sights)[number];

export interface CupTime {
  cup: string;
  kind: FlowCupKind | 'own';
  seconds: Seconds | 'wont-run';
}

export const stirTools = ['hand', 'whisk', 'mixer'] as const;
export type StirTool = (typeof stirTools)[number];

export const holdCauses = ['contaminated', 'frozen', 'hazard', 'other'] as const;
export type HoldCause = (typeof holdCauses)[number];

/** What went in or came out. A flocculant counts by its salt; water removed is a draw-off. */
export type Added =
  | { what: 'water'; volume?: Millilitres }
  | { what: 'draw-off'; volume?: Millilitres }
  | { what: 'dry'; mass?: Grams }
  | { what: 'flocculant'; volume?: Millilitres; heptahydrate?: Grams }
  | { what: 'deflocculant'; volume?: Millilitres; mass?: Grams }
  | {
      what: 'glaze';
      volume?: Millilitres;
      gravity?: Gravity;
      gravityU?: number;
      from?: StreamNo;
      /** Flocculant that comes over in it. */
      heptahydrate?: Grams;
    }
  | { what: 'taken'; volume?: Millilitres; to?: StreamNo }
  | { what: 'other'; name?: string; volume?: Millilitres; mass?: Grams };

export type BucketEvent =
  | { kind: 'setup'; settings: BucketSettings; volume?: Millilitres }
  | {
      kind: 'change';
      settings: Partial<BucketSettings>;
      cleared?: (keyof BucketSettings)[];
      volume?: Millilitres;
    }
  | {
      kind: 'reading';
      gravity?: { value: Gravity; u95: number; by: 'weight' | 'stated' | 'hydrometer' };
      flow?: CupTime;
      look?: FlowLook;
      gap?: Millimetres;
      temperature?: Celsius;
      /** Stirred to the bottom just before, no cake left. Absent: not said. */
      stirred?: boolean;
      seen: Sight[];
    }
  | { kind: 'addition'; added: Added; remake?: boolean }
  | { kind: 'stir'; minutes?: number; tool?: StirTool; seen: Sight[] }
  | { kind: 'sieve'; mesh?: number }
  | {
      kind: 'tile';
      seconds: Seconds;
      thickness: Millimetres;
      absorption?: number;
      body?: string;
      gravity?: Gravity;
    }
  | { kind: 'hold'; cause: HoldCause; why: string }
  | { kind: 'release' }
  | { kind: 'retire' }
  | { kind: 'undo'; of: Seq };

/** One line of the logbook. `at` is when it happened, `loggedAt` when it was written down. */
export interface Entry<E = BucketEvent> {
  id: EntryId;
  stream: StreamNo;
  seq: Seq;
  at: Instant;
  loggedAt: Instant;
  by: MemberId;
  event: E;
}
