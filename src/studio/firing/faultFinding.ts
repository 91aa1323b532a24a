import { fisherExact } from '../../glaze/statistics/fisherExact.ts';
import { isLead, leadWithin, type Comparison, type FaultPair } from './compareFaults.ts';
import { isOfFit } from './firedEvent.ts';

/** What the counts support, and no more. */
export type FaultFinding =
  | { is: 'none' | 'all-good' | 'all-faulty' | 'nothing-varies' | 'no-lead' }
  | { is: 'too-few'; more: number }
  | { is: 'wants'; what: 'faulty' | 'good'; more: number }
  | { is: 'lead'; pair: FaultPair };

/** Whether this many days could show a lead in the best case: one condition with every fault and never without. */
const couldShowLead = (days: number, faulty: number): boolean => {
  const p = fisherExact({ hits: faulty, of: faulty, otherHits: 0, otherOf: days - faulty });
  return p.ok && p.value <= leadWithin;
};

/** The fewest days that could show a lead. */
const fewestDays = ((): number => {
  for (let days = 2; ; days++)
    for (let faulty = 1; faulty < days; faulty++) if (couldShowLead(days, faulty)) return days;
})();

/** How many more days of the rarer outcome are needed. */
const moreDaysNeeded = (days: number, faulty: number): number => {
  const rarer = Math.min(faulty, days - faulty);
  let more = 0;
  while (!couldShowLead(days + more, rarer + more)) more++;
  return more;
};

/** The result of the comparison. A lead about the bucket comes before one about a fault of fit. */
export const faultFinding = ({ days, faulty, pairs }: Comparison): FaultFinding => {
  if (days === 0) return { is: 'none' };
  const leads = pairs.filter(isLead);
  const pair = leads.find(({ fault }) => !isOfFit(fault)) ?? leads[0];
  if (pair) return { is: 'lead', pair };
  if (days < fewestDays) return { is: 'too-few', more: fewestDays - days };
  if (pairs.some(({ q }) => q !== undefined)) return { is: 'no-lead' };
  if (faulty === 0) return { is: 'all-good' };
  if (faulty === days) return { is: 'all-faulty' };
  const more = moreDaysNeeded(days, faulty);
  if (more === 0) return { is: 'nothing-varies' };
  return { is: 'wants', what: faulty < days - faulty ? 'faulty' : 'good', more };
};
