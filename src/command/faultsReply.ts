import { fewestDays, isLead, type Comparison, type FaultPair } from '../studio/compareFaults.ts';
import type { Dip } from '../studio/dip.ts';
import { conditionKey } from '../studio/dipCondition.ts';
import { isOfFit } from '../studio/firedEvent.ts';
import type { StreamNo } from '../studio/ids.ts';
import type { Text } from '../words/text.ts';
import type { Words } from '../words/words.ts';
import type { Reply } from './contract.ts';

/** As many pairs as a phone shows at once, and as many results as tell that they came in. */
const mostRows = 6;
const mostLately = 5;

const titleOf = ({ days, faulty, pairs }: Comparison, { fault: w }: Words): Text => {
  if (days === 0) return w.none;
  if (days < fewestDays) return w.tooFew(days, fewestDays - days);
  if (faulty === 0) return w.noFault(days);
  if (
    faulty === days &&
    pairs.every(({ rates }) => rates.hits + rates.otherHits === rates.of + rates.otherOf)
  )
    return w.onlyFaults(days);
  const leads = pairs.filter(isLead);
  const lead = leads.find(({ fault }) => !isOfFit(fault)) ?? leads[0];
  if (lead) return isOfFit(lead.fault) ? w.leadOfFit(lead) : w.lead(lead);
  if (pairs.every(({ q }) => q === undefined)) return w.nothingVaries(days, faulty);
  return w.noLead(days, faulty);
};

/** Those that chance explains least; a pair that could not show anything is none. */
const shown = ({ pairs }: Comparison): FaultPair[] =>
  pairs.filter(({ q, p }) => q !== undefined && p < 1).slice(0, mostRows);

const pairData = ({ fault, condition, rates, p, q, bayesFactor, difference }: FaultPair) => ({
  fault,
  condition: conditionKey(condition),
  withFault: rates.hits,
  withFaultOf: rates.of,
  without: rates.otherHits,
  withoutOf: rates.otherOf,
  p,
  q: q ?? null,
  bayesFactor,
  interval: difference ? { low: difference.low, high: difference.high } : null,
  lead: isLead({ fault, condition, rates, p, ...(q !== undefined && { q }), bayesFactor }),
  fit: isOfFit(fault),
});

/** What goes with what, ranked, and no more said of it than the counts show. */
export const faultsReply = (
  dips: readonly Dip[],
  found: Comparison,
  names: ReadonlyMap<StreamNo, string>,
  words: Words,
): Reply => {
  const w = words.fault;
  const rows = shown(found);
  const leads = found.pairs.filter(isLead);
  const [nearest] = rows;
  const tests = found.pairs.filter(({ q }) => q !== undefined).length;
  return {
    kind: 'answer',
    title: titleOf(found, words),
    facts: rows.map((pair) => ({ label: w.rowLabel(pair), text: w.row(pair) })),
    reasons: [
      ...(leads.length === 0 && nearest ? [w.nearest(nearest)] : []),
      ...(leads.length > 1 ? [w.together] : []),
      ...(rows.some(({ fault }) => isOfFit(fault)) ? [w.fit] : []),
      ...(tests > 0 ? [w.searched(tests)] : []),
      ...(found.days > 0 ? [w.counted] : []),
      ...dips.slice(-mostLately).map(({ result, dipped }) => {
        const name = names.get(result.said.bucket) ?? '';
        return w.lately(words.fired.listed(result.said, result.id, name, dipped?.from ?? result.at));
      }),
    ],
    data: {
      faults: found.pairs.map(pairData),
      results: dips.length,
      days: found.days,
      faultyDays: found.faulty,
      tests,
    },
  };
};
