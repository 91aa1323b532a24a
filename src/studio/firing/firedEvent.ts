import type { Bisque } from '../piece/bisque.ts';
import type { Instant, Seq, StreamNo } from '../ids.ts';

/** Faults of fired glaze, by their usual names. */
export const faults = [
  'crawling',
  'running',
  'pinholing',
  'blistering',
  'shivering',
  'crazing',
  'dunting',
  'too-thin',
  'too-thick',
  'dull',
  'off-colour',
] as const;
export type Fault = (typeof faults)[number];

/** Faults of fit: glaze and body shrank or were cooled differently, whatever the state of the bucket. */
const ofFit: ReadonlySet<Fault> = new Set(['shivering', 'crazing', 'dunting']);
export const isOfFit = (fault: Fault): boolean => ofFit.has(fault);

/** A span of time; both ends are the same when the hour is known. */
export interface TimeSpan {
  from: Instant;
  to: Instant;
}

/** What somebody found when the kiln was opened. */
export interface FiredSaid {
  bucket: StreamNo;
  /** The bucket of the second layer. */
  over?: StreamNo;
  /** Empty when the piece came out well. */
  faults: Fault[];
  pieces?: number;
  /** How many of the pieces had a fault; all of them when absent. */
  faulty?: number;
  dipped?: TimeSpan;
  /** The plan that the piece was prepared by: the seq of its entry. */
  plan?: Seq;
  /** The resist coat that was on it: the seq of its entry. */
  coat?: Seq;
  body?: string;
  /** The cone of the glaze firing; negative for cones with a leading 0: 06 is -6. */
  cone?: number;
  kiln?: string;
  bisque?: Bisque;
  bisqueCone?: number;
}

export type FiredEvent = { kind: 'fired'; fired: FiredSaid } | { kind: 'undo'; of: Seq };
