import { present } from '../../present.ts';
import type { Reason } from '../../studio/verdict/verdict.ts';
import { spanText } from '../text/measures.ts';
import { t, type Text } from '../text/text.ts';

/** What a bucket's own rests say of how long it may rest. */
export const restText = ({
  limitHours,
  longestHours,
  shortestHours,
  gel,
}: Extract<Reason, { because: 'rest-learned' }>): Text => {
  const seen = present([
    longestHours !== undefined && `nothing had settled after ${spanText(longestHours)}`,
    shortestHours !== undefined && `clear water or a cake was seen after ${spanText(shortestHours)}`,
  ]).join('; ');
  return t`It may rest ${[spanText(limitHours)]}, learned from this bucket: ${[seen]}.${[gel ? ' Without its gel it would have settled sooner. No formula says how long a gel holds.' : '']}`;
};
