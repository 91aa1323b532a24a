import { days, type Instant, type MemberId, type StreamNo } from './ids.ts';

/** After this long nobody waits for the answer: common practice. */
export const questionsAreKept = days(60);

/** A question that /ask could not answer. */
export interface OpenQuestion {
  no: number;
  text: string;
  /** The bucket that it was about, if one was named. */
  bucket?: StreamNo;
  /** When it was last asked, and how often. */
  at: Instant;
  times: number;
  /** Who asked, if they wanted the keepers to know. */
  by?: MemberId;
}
