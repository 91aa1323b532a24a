import type { BucketState } from '../../../studio/bucket/bucketState.ts';
import type { Asking, Reply } from '../../../contract/contract.ts';

/** A question that may be a sum, or about the room. */
export interface SumAsked {
  /** The question in small letters, mistyped words mended, the buckets' names replaced by “bucket”. */
  heard: string;
  /** The one bucket that it is about. */
  bucket: BucketState | undefined;
  /** All buckets that it names. */
  named: readonly BucketState[];
}

/** Answers a question of one kind; undefined when it is of another. */
export type Sum = (asked: SumAsked, asking: Asking) => Promise<Reply | undefined>;
