import type { BucketState } from './bucketState.ts';
import type { Contents } from '../contents/contents.ts';

/** The same done to what a pail holds, and to what it would hold if its last reading were wrong. */
export const changeContents = (
  { contents, unexpected }: Pick<BucketState, 'contents' | 'unexpected'>,
  change: (contents: Contents) => Contents,
): Pick<BucketState, 'contents' | 'unexpected'> => ({
  ...(contents && { contents: change(contents) }),
  ...(unexpected && { unexpected: { ...unexpected, expected: change(unexpected.expected) } }),
});
