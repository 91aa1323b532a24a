import type { Millimetres } from '../../glaze/units.ts';
import type { Instant, Seq, StreamNo } from '../ids.ts';
import type { Resist } from '../resist/overnight.ts';

/** The steps of preparing and dipping a piece, in this order. */
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

/** What a member says about a piece to be glazed. */
export interface PieceSaid {
  name: string;
  bucket: StreamNo;
  /** The bucket of the second layer. */
  second?: StreamNo;
  surface: Surface;
  underglaze: Underglaze;
  resist?: Resist;
  body?: string;
  /** Absorption of the bisque, in per cent. */
  absorption?: number;
  /** The cone that it was bisque-fired to; negative for cones with a leading 0: 06 is -6. */
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
