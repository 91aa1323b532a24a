import type { Bisque } from '../piece/bisque.ts';
import type { Instant, Seq, StreamNo } from '../ids.ts';

/** What the kiln brings to light, by the usual names. */
export const faults = [
  'crawling',
  'running',
  'pinholing',
  'blistering',
  'shivering',
  'crazing',
  'dunting',
] as const;
export type Fault = (typeof faults)[number];

/** Faults of fit: glaze and body shrink, or were cooled, unlike one another, however the bucket stood. */
const ofFit: ReadonlySet<Fault> = new Set(['shivering', 'crazing', 'dunting']);
export const isOfFit = (fault: Fault): boolean => ofFit.has(fault);

/** From when until when; one and the same when the hour is known. */
export interface Stretch {
  from: Instant;
  to: Instant;
}

/** What somebody found when the kiln was opened. */
export interface FiredSaid {
  bucket: StreamNo;
  /** The bucket of the layer over it. */
  over?: StreamNo;
  /** None: it came out good. */
  faults: Fault[];
  pieces?: number;
  /** How many of the pieces had a fault; all of them when that was not said. */
  faulty?: number;
  dipped?: Stretch;
  /** The plan by which the piece was prepared, as an entry of the pieces. */
  plan?: Seq;
  /** The resist coat that was on it, as an entry of the coats. */
  coat?: Seq;
  body?: string;
  /** The cone that the glaze was fired to, below zero for those with a 0 before. */
  cone?: number;
  kiln?: string;
  bisque?: Bisque;
  bisqueCone?: number;
}

export type FiredEvent = { kind: 'fired'; fired: FiredSaid } | { kind: 'undo'; of: Seq };
