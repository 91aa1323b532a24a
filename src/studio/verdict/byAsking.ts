import { definedOnly } from '../../definedOnly.ts';
import { byMove, conditions } from './byMove.ts';
import { byRule } from './byRule.ts';
import { firstApplying, unbelieved, unexpected } from './rules.ts';
import type { Facts } from './facts.ts';
import type { Asked, Reason, Verdict } from './verdict.ts';
import { bandReasons, verdictOn, type Chance } from './verdictOn.ts';
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
  const why = firstApplying(whyWeigh, f);
  const scale = scaleThisTime(f, asks);
  if (why) {
    const verdict = byRule(f, why, { asks, sureness });
    return { ...verdict, reasons: [...scale, ...verdict.reasons] };
  }
  const weighed = f.state.believed?.at;
  const odd = unexpected(f);
  return verdictOn(f, {
    step: 'measure',
    rule: 'weigh-first',
    asks,
    reasons: [
      ...scale,
      ...f.reasons,
      ...unbelieved(f),
      ...odd,
      ...(odd.length > 0 ? [] : [{ because: 'weigh-first' as const, ...definedOnly({ weighed }) }]),
      ...(conditions['just-mixed'](f) ? [{ because: 'just-mixed' } as const] : []),
      ...bandReasons(chance),
    ],
    dont: ['water-on-looks'],
  });
};

/** Many readings, and they do not settle it. */
export const unsettled = (chance: Chance): Verdict => {
  const { f, sureness } = chance;
  return verdictOn(f, {
    step: 'ask-keeper',
    rule: 'unsettled',
    reasons: [
      ...f.reasons,
      ...unexpected(f),
      { because: 'unsettled', readings: sureness.visit?.readings ?? 0 },
      ...bandReasons(chance),
    ],
    dont: ['adjust'],
  });
};
