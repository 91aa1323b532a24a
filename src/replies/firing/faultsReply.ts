import { present } from '../../present.ts';
import { isLead, isOftener, type Comparison, type FaultPair } from '../../studio/firing/compareFaults.ts';
import type { Dip } from '../../studio/firing/dip.ts';
import { conditionKey } from '../../studio/firing/dipCondition.ts';
import { faultFinding } from '../../studio/firing/faultFinding.ts';
import { isOfFit } from '../../studio/firing/firedEvent.ts';
import type { StreamNo } from '../../studio/ids.ts';
import type { Text } from '../../words/text/text.ts';
import type { Words } from '../../words/words.ts';
import type { Reply } from '../../contract/contract.ts';

/** The most fault pairs shown: as many as a phone shows at once. */
const mostRows = 6;
/** A pair that chance would produce every other time is not shown. */
const worthShowing = 0.5;
const mostLately = 5;

const titleOf = (found: Comparison, { fault: w }: Words): Text => {
  const { days, faulty } = found;
  const finding = faultFinding(found);
  switch (finding.is) {
    case 'lead':
      return w.lead(finding.pair, isOfFit(finding.pair.fault));
    case 'too-few':
      return w.tooFew(days, finding.more);
    case 'wants':
      return w.wants(days, faulty, finding.what, finding.more);
    default:
      return w.finding[finding.is](days, faulty);
  }
};

/** Faults that were more frequent under some condition; those least likely to be chance come first. */
const shownPairs = ({ pairs }: Comparison): FaultPair[] =>
  pairs.filter((pair) => pair.q !== undefined && pair.p < worthShowing && isOftener(pair)).slice(0, mostRows);

const pairData = (pair: FaultPair) => {
  const { fault, condition, rates, p, q, bayesFactor, difference } = pair;
  return {
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
    lead: isLead(pair),
    fit: isOfFit(fault),
  };
};

/** Faults and the conditions that go with them, ranked, claiming no more than the counts show. */
export const faultsReply = (
  dips: readonly Dip[],
  found: Comparison,
  names: ReadonlyMap<StreamNo, string>,
  words: Words,
): Reply => {
  const w = words.fault;
  const rows = shownPairs(found);
  const leads = found.pairs.filter(isLead);
  const [nearest] = rows;
  const tests = found.pairs.filter(({ q }) => q !== undefined).length;
  return {
    kind: 'answer',
    title: titleOf(found, words),
    facts: rows.map((pair) => ({ label: w.rowLabel(pair), text: w.row(pair) })),
    reasons: present([
      leads.length === 0 && nearest && w.nearest(nearest),
      leads.length > 1 && w.together,
      rows.some(({ fault }) => isOfFit(fault)) && w.fit,
      found.days > 0 && w.counted,
      ...dips.slice(-mostLately).map(({ result, dipped }) => {
        const name = names.get(result.said.bucket) ?? '';
        return w.lately(words.fired.listed(result.said, result.id, name, dipped?.from ?? result.at));
      }),
      tests > 0 && w.searched(tests),
      ...rows.map(w.inNumbers),
    ]),
    data: {
      faults: found.pairs.map(pairData),
      results: dips.length,
      days: found.days,
      faultyDays: found.faulty,
      tests,
    },
  };
};
