import type { BucketState } from '../bucketState.ts';
import type { Contents } from '../../contents/contents.ts';

/** Applies one change to the contents, and to the contents that are expected if the last reading was wrong. */
export const changeContents = (
  { contents, unexpected }: Pick<BucketState, 'contents' | 'unexpected'>,
  change: (contents: Contents) => Contents,
): Pick<BucketState, 'contents' | 'unexpected'> => ({
  ...(contents && { contents: change(contents) }),
  ...(unexpected && { unexpected: { ...unexpected, expected: change(unexpected.expected) } }),
});
