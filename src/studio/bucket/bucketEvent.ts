import type { FlowCupKind } from '../../glaze/flow/flowCup.ts';
import type { Celsius, Gravity, Grams, Millilitres, Millimetres, Seconds } from '../../glaze/units.ts';
import type { Repeats } from '../belief/repeats.ts';
import type { BucketCaution, BucketSettings } from '../settings/bucketSettings.ts';
import type { Entry } from '../entry.ts';
import type { Seq, StreamNo } from '../ids.ts';

export const flowLooks = ['thin', 'right', 'thick'] as const;
export type FlowLook = (typeof flowLooks)[number];

export const observations = [
  'clear-water',
  'cake',
  'lumps',
  'skin',
  'cake-gone',
  'smell',
  'mould',
  'crystals',
  'ice',
  'none',
] as const;
export type Observation = (typeof observations)[number];

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
      /** The glaze is the bucket's own: back from a tray, or a fresh batch of the same mix. */
      own?: true;
      /** Flocculant that the glaze brings along. */
      heptahydrate?: Grams;
    }
  | { what: 'taken'; volume?: Millilitres; to?: StreamNo }
  | { what: 'other'; name?: string; volume?: Millilitres; mass?: Grams };

/**
 * What an addition brings into a bucket besides water and powder. It is worked out when the addition is logged, so
 * that folding one bucket needs no other bucket. Undoing the addition removes it.
 */
export interface Brought {
  cautions: BucketCaution[];
  hold?: { cause: HoldCause; why: string };
  /** It is another glaze: earlier settings by a keeper no longer describe the contents. */
  foreign?: true;
}

/** What other buckets of the studio have shown, scaled to count as much as it should for this one. */
export interface Learned {
  days: number;
  /** What nobody logged, by its kind; presses of "right" without a look, of so many looks. */
  counts: Record<'water' | 'powder' | 'waterOut' | 'salt' | 'blind' | 'looks', number>;
  /** How far weighings with a vessel scatter; of one that nobody named, without a name. */
  vessels: ({ vessel?: string } & Repeats)[];
  cups: ({ cup: string } & Repeats)[];
}

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
      gravity?: { value: Gravity; u95: number; by: 'weight' | 'stated' | 'hydrometer'; vessel?: string };
      flow?: CupTime;
      look?: FlowLook;
      gap?: Millimetres;
      /** How much is in the pail, as somebody judged it. */
      level?: Millilitres;
      temperature?: Celsius;
      /** Stirred to the bottom just before, with no cake left. Absent when not said. */
      stirred?: boolean;
      seen: Observation[];
    }
  | { kind: 'addition'; added: Added; remake?: boolean; brings?: Brought }
  | { kind: 'stir'; minutes?: number; tool?: StirTool; look?: FlowLook; seen: Observation[] }
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
  /** Written by the program itself, at night: what the other buckets have shown is expected here too. */
  | ({ kind: 'learned' } & Learned)
  | { kind: 'undo'; of: Seq };

export type BucketEventOf<Kind extends BucketEvent['kind']> = Extract<BucketEvent, { kind: Kind }>;
export type AddedOf<What extends Added['what']> = Extract<Added, { what: What }>;

export type BucketEntry = Entry<BucketEvent>;
