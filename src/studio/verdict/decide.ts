import type { Chances } from '../belief/chances.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { isFlagged } from '../bucket/withoutFlagged.ts';
import { restLimitOf, usualRest } from '../bucket/rests.ts';
import { stirredLongBefore, withStir } from '../bucket/fold/applyObservations.ts';
import { minutes, since, type Instant, type Role } from '../ids.ts';
import { barehanded } from '../settings/barehanded.ts';
import { usualSure } from '../settings/studio.ts';
import { byAsking, unsettled } from './byAsking.ts';
import { byMove } from './byMove.ts';
import { byRule, readNow } from './byRule.ts';
import { chooseByChance, mostReadings, surenessOf } from './chooseByChance.ts';
import { facts, type Facts } from './facts.ts';
import { widerThanWindow } from './gravityBand.ts';
import { firstApplying, rules, unbelieved, type Applying } from './rules.ts';
import type { Verdict } from './verdict.ts';
import { surely, verdictOn, type Chance } from './verdictOn.ts';
import { whyWeigh } from './whyWeigh.ts';

export interface DecideAt {
  now: Instant;
  role: Role;
  /** How likely a bucket must be to be right for “use it”, 0 to 1; the usual when a keeper has set nothing. */
  sure?: number | undefined;
}

const isCoarse = ({ measured, state: { settings } }: Facts): boolean =>
  measured !== undefined && settings.gravity !== undefined && widerThanWindow(measured.u95, settings.gravity);

const byChance = (chance: Chance, sure: number): Verdict => {
  const { f, sureness } = chance;
  const chosen = chooseByChance(sureness, {
    sure,
    byFinger: f.flow.band,
    mayLook: barehanded(f.state.settings),
    isCoarse: isCoarse(f),
    isFlagged: isFlagged(f.state),
    isThickSince: f.flow.band === 'thick',
    isStirredOutBefore: stirredLongBefore(f.state.stir, f.now) !== undefined,
  });
  // However wide a window is, a bucket that was not weighed, or not since what was known was voided, is weighed first.
  if ((!f.measured || f.state.voided) && chosen.kind !== 'ask') return byAsking(chance, readNow(f.state));
  switch (chosen.kind) {
    case 'use':
      return isAboutToSettle(f) ? stirAgain(chance) : byMove(chance, { gravity: 'in', flow: 'in' });
    case 'ask':
      return byAsking(chance, chosen.asks);
    case 'move':
      // Nothing is poured in unless the last reading also says so, and is not doubted.
      if (chosen.gravity !== 'in' && (f.measured?.band !== chosen.gravity || isFlagged(f.state)))
        return (sureness.visit?.readings ?? 0) >= mostReadings
          ? unsettled(chance)
          : byAsking(chance, ['weight']);
      return byMove(chance, chosen);
    case 'unsettled':
      return unsettled(chance);
  }
};

/**
 * Where nobody knows how long a bucket may rest, a pot is dipped within 45 minutes of a stir (common practice). Five of them
 * are for the dip itself.
 */
const stirredForDip = minutes(40);

/** About to settle: it is stirred once more before it is used. */
const stirAgain = ({ f, sureness }: Chance): Verdict =>
  verdictOn(f, {
    step: 'stir',
    rule: 'stir-again',
    then: 'use',
    reasons: [...f.reasons, ...unbelieved(f), ...(f.measured?.reasons ?? []), ...surely(sureness, f)],
    dont: ['water-in', 'water-out'],
  });

const isAboutToSettle = ({ state, now }: Facts): boolean =>
  state.stir !== undefined &&
  restLimitOf(state).limit === usualRest &&
  since(state.stir.at, now) > stirredForDip;

const withChances = (verdict: Verdict, chances: Chances | undefined): Verdict => {
  if (chances) verdict.chances = chances;
  return verdict;
};

/** The verdict of a rule, with what is to be done once the bucket was stirred or sieved, and what is wanted then. */
const withWhatFollows = (f: Facts, found: Applying, after: BucketState, at: DecideAt): Verdict => {
  const { step, asks, chances } = decide(after, at);
  // When a later reading does not count, the change that the last counted one asks for is in doubt.
  const then =
    after.unbelieved && step !== 'use'
      ? { asks: readNow(after), then: 'measure' as const }
      : { asks, then: step };
  return withChances(byRule(f, found, then), chances);
};

/**
 * The first step that applies to a bucket: what comes before any reading, and then by how likely it is to be right. A
 * bucket without a window of gravity cannot be judged.
 */
export const decide = (state: BucketState, { now, role, sure = usualSure }: DecideAt): Verdict => {
  const f = facts(state, now);
  const found = firstApplying(rules, f) ?? (state.settings.gravity ? undefined : firstApplying(whyWeigh, f));
  if (!found) {
    const sureness = surenessOf(state, now);
    return withChances(byChance({ f, role, sureness }, sure), sureness.chances);
  }
  const at = { now, role, sure };
  const { step, then } = found.rule;
  switch (then) {
    case 'what-follows-a-stir':
      return withWhatFollows(f, found, withStir(state, { at: now }), at);
    case 'what-follows-a-sieve':
      return withWhatFollows(f, found, { ...state, sieved: { at: now } }, at);
    default:
      return byRule(f, found, { asks: step === 'measure' ? readNow(state) : [], then });
  }
};
