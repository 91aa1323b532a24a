import { minutes, since, type Instant, type MemberId } from '../ids.ts';
import type { Read } from './repeats.ts';

export type Glance = 'thin' | 'right' | 'thick';

/** What was read in one visit. Nothing was poured in between, except a dose, which leaves gravity as it was. */
export interface Visit {
  /** Of the last reading. */
  at: Instant;
  /** Since the last change. */
  readings: number;
  weighed: boolean;
  timed: boolean;
  /** It was dosed since it was weighed. */
  dosed?: true;
  /** The last look and whose it was: one person's looks count once. */
  look?: Glance;
  by?: MemberId;
  /** What was read, by kind: what is repeated tells how well it repeats. */
  reads?: Record<string, Read>;
}

/** Readings closer together than this are of one visit. */
const oneVisit = minutes(60);

/** The visit at this time, if the last one has not ended. */
export const visitAt = ({ visit }: { visit?: Visit }, at: Instant): Visit | undefined =>
  visit && since(visit.at, at) <= oneVisit ? visit : undefined;

/** The visit with one more reading, or another that begins with it. */
export const visitGoesOn = (read: { visit?: Visit }, at: Instant): Visit => {
  const visit = visitAt(read, at);
  return visit
    ? { ...visit, at, readings: visit.readings + 1 }
    : { at, readings: 1, weighed: false, timed: false };
};
