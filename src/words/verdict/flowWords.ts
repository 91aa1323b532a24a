import type { FlowBand } from '../../studio/verdict/verdict.ts';

/** How a bucket flows, in the words of whoever looks at it. */
export const flowWords: Record<FlowBand, string> = {
  thin: 'thin',
  in: 'right',
  thick: 'thick',
  unknown: 'unknown',
};
