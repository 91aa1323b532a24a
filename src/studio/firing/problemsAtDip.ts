import type { BucketThen } from './bucketThen.ts';
import { hours, since, type Instant } from '../ids.ts';

/** What was wrong with a bucket at a dip, the most telling first. */
export type DipProblem =
  | { is: 'over' | 'under'; by: number }
  /** Without `hours`, no stir had been logged before. */
  | { is: 'rested'; hours?: number }
  | { is: 'cake' | 'lumps' | 'on-hold' | 'thick' | 'thin' };

/** What the logbook says was wrong with a bucket at the time; unknown conditions are left out. */
export const problemsAtDip = (
  { gravity, stirredAt, conditions }: BucketThen,
  dipped: Instant,
): DipProblem[] => [
  ...(gravity && conditions['gravity-over'] === true
    ? [{ is: 'over' as const, by: gravity.value - gravity.window.high }]
    : []),
  ...(gravity && conditions['gravity-under'] === true
    ? [{ is: 'under' as const, by: gravity.window.low - gravity.value }]
    : []),
  ...(conditions['on-hold'] === true ? [{ is: 'on-hold' as const }] : []),
  ...(conditions.rested === true
    ? [
        {
          is: 'rested' as const,
          ...(stirredAt !== undefined && { hours: since(stirredAt, dipped) / hours(1) }),
        },
      ]
    : []),
  ...(conditions.cake === true ? [{ is: 'cake' as const }] : []),
  ...(conditions.lumps === true ? [{ is: 'lumps' as const }] : []),
  ...(conditions['flow-thick'] === true ? [{ is: 'thick' as const }] : []),
  ...(conditions['flow-thin'] === true ? [{ is: 'thin' as const }] : []),
];
