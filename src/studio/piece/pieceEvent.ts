import type { Millimetres } from '../../glaze/units.ts';
import type { Instant, Seq, StreamNo } from '../ids.ts';
import type { Resist } from '../resist/overnight.ts';

/** What is done to a piece before, at and after its dip, in this order. */
export const prepSteps = [
  'dust',
  'sheen',
  'underglaze',
  'resist',
  'night',
  'bucket',
  'wet',
  'carving',
  'dip',
  'second',
  'peel',
  'foot',
] as const;
export type PrepStep = (typeof prepSteps)[number];

export const surfaces = ['smooth', 'textured', 'carved'] as const;
export type Surface = (typeof surfaces)[number];

export const underglazes = ['none', 'thin', 'thick'] as const;
export type Underglaze = (typeof underglazes)[number];

/** What a member says of a piece that is to be glazed. */
export interface PieceSaid {
  name: string;
  bucket: StreamNo;
  /** The bucket of a second layer. */
  second?: StreamNo;
  surface: Surface;
  underglaze: Underglaze;
  resist?: Resist;
  body?: string;
  /** Of its bisque, in per cent. */
  absorption?: number;
  /** The cone that it was bisque-fired to, below zero for those with a 0 before: 06 is -6. */
  cone?: number;
  wall?: Millimetres;
  thickness?: Millimetres;
  runny?: boolean;
  plannedFor?: Instant;
}

export type PieceEvent =
  | { kind: 'piece'; piece: PieceSaid; steps: PrepStep[] }
  | { kind: 'done'; of: Seq; steps: PrepStep[] }
  | { kind: 'undo'; of: Seq };
