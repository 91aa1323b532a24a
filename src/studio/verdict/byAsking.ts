import { definedOnly } from '../../definedOnly.ts';
import { byMove, conditions, type Chance } from './byMove.ts';
import { byRule } from './byRule.ts';
import { unbelieved } from './rules.ts';
import { unexpected } from './unexpected.ts';
import type { Facts } from './facts.ts';
import type { Asked, Reason, Verdict } from './verdict.ts';
import { asRead, surely, verdictOn } from './verdictOn.ts';
import { whyWeigh } from './whyWeigh.ts';

/** One reading in so many is wanted on a scale, where a hydrometer is the habit: from memory. */
const oneIn = 4;

/** A hydrometer that is off cannot be found from its own readings. */
const scaleThisTime = ({ state: { byHydrometer = 0 } }: Facts, asks: readonly Asked[]): Reason[] =>
  asks.includes('weight') && byHydrometer % oneIn === oneIn - 1
    ? [{ because: 'scale-this-time', readings: byHydrometer }]
    : [];

/** A reading is wanted: how it flows, or first of all its weight, and then why. */
export const byAsking = (chance: Chance, asks: Asked[]): Verdict => {
  const { f, sureness } = chance;
  // It was weighed and is likely right; only how it flows is open.
  if (f.measured && asks[0] !== 'weight') return byMove(chance, { gravity: 'in', flow: 'unknown', asks });
  const why = whyWeigh.find(({ applies }) => applies(f));
  const scale = scaleThisTime(f, asks);
  if (why) {
    const verdict = byRule(f, why, { asks, sureness });
    return { ...verdict, reasons: [...scale, ...verdict.reasons] };
  }
  const weighed = f.state.believed?.at;
  const odd = unexpected(f);
  return verdictOn(f, asRead(f.read, true), {
    step: 'measure',
    rule: 'weigh-first',
    asks,
    then: undefined,
    keeperStep: undefined,
    amounts: {},
    reasons: [
      ...scale,
      ...f.reasons,
      ...unbelieved(f),
      ...odd,
      ...(odd.length > 0 ? [] : [{ because: 'weigh-first' as const, ...definedOnly({ weighed }) }]),
      ...(conditions['just-mixed'](f) ? [{ because: 'just-mixed' } as const] : []),
      ...(f.measured?.reasons ?? []),
      ...f.flow.reasons,
      ...surely(sureness, f),
    ],
    dont: ['water-on-looks'],
    cautions: [],
  });
};

/** Many readings, and they do not settle it. */
export const unsettled = ({ f, sureness }: Chance): Verdict =>
  verdictOn(f, asRead(f.read, true), {
    step: 'ask-keeper',
    rule: 'unsettled',
    asks: [],
    then: undefined,
    keeperStep: undefined,
    amounts: {},
    reasons: [
      ...f.reasons,
      ...unexpected(f),
      { because: 'unsettled', readings: sureness.visit?.readings ?? 0 },
      ...(f.measured?.reasons ?? []),
      ...f.flow.reasons,
      ...surely(sureness, f),
    ],
    dont: ['adjust'],
    cautions: [],
  });
