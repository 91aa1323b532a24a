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
): DipProblem[] => {
  const { rested, cake, lumps } = conditions;
  const rest = stirredAt === undefined ? {} : { hours: since(stirredAt, dipped) / hours(1) };
  const found: (DipProblem | false | undefined)[] = [
    conditions['gravity-over'] && gravity && { is: 'over', by: gravity.value - gravity.window.high },
    conditions['gravity-under'] && gravity && { is: 'under', by: gravity.window.low - gravity.value },
    conditions['on-hold'] && { is: 'on-hold' },
    rested && { is: 'rested', ...rest },
    cake && { is: 'cake' },
    lumps && { is: 'lumps' },
    conditions['flow-thick'] && { is: 'thick' },
    conditions['flow-thin'] && { is: 'thin' },
  ];
  return found.filter((one) => typeof one === 'object');
};
