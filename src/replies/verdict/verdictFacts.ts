import { present } from '../../present.ts';
import { fact } from '../../contract/replyParts.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { isFlagged } from '../../studio/bucket/withoutFlagged.ts';
import { restLimitOf, usualRest } from '../../studio/bucket/rests.ts';
import { hours, instant, since, type Instant } from '../../studio/ids.ts';
import { join, type Text } from '../../words/text/text.ts';
import { ofNow } from '../../studio/verdict/readAt.ts';
import type { Verdict } from '../../studio/verdict/verdict.ts';
import type { Words } from '../../words/words.ts';
import type { Asking, Fact } from '../../contract/contract.ts';

/** Whether something was added or removed since the last believed reading. */
export const hasMovedOn = ({ moved, unknownSince, voided }: BucketState): boolean =>
  voided !== undefined || moved > 0 || unknownSince.length > 0;

/** Whether the known gravity is from before something that invalidated it. */
export const isVoid = ({ voided, unbelieved }: BucketState): boolean =>
  voided !== undefined && unbelieved === undefined;

/** Why a reading does not count, or not yet. */
export const uncounted = (value: number, state: BucketState, { verdict: w }: Words): Text =>
  isVoid(state) ? w.fromBefore(value) : isFlagged(state) ? w.flagged(value) : w.notBelieved(value);

/** When something was read, where that was not about now. */
const readAt = (at: Instant | undefined, now: Instant): Instant | undefined =>
  at === undefined || since(at, now) <= ofNow ? undefined : at;

/** How long ago something was read, where that was not about now, as the end of its text. */
export const ageOf = (at: Instant | undefined, now: Instant, { verdict: w }: Words): Text => {
  const read = readAt(at, now);
  return read === undefined ? [] : [', ', ...w.ago(read)];
};

/** Whether it settles before an evening at the bucket is over: sooner than the usual rest. */
export const settlesFast = (state: BucketState): boolean => restLimitOf(state).limit < usualRest;

/** A glaze that settles fast is stirred again between two pieces. */
const stirAgain = ({ step }: Verdict, state: BucketState, { verdict: w }: Words): Fact | undefined =>
  step === 'use' && settlesFast(state)
    ? fact(w.factStirAgain, w.stirAgainEvery(restLimitOf(state).limit / hours(1)))
    : undefined;

/** The last reading as a fact. One that does not count is drawn hollow; one that no longer counts is not drawn. */
const readingFact = (
  { gravity, window }: Verdict,
  state: BucketState,
  { words, now, unsaid, foretold }: { words: Words; now: Instant; unsaid: boolean; foretold: boolean },
): Fact | undefined => {
  const w = words.verdict;
  if (!gravity) return undefined;
  const { value, u95, believed } = gravity;
  const stale = isVoid(state);
  const within = w.gravityFact(value, u95, null);
  const old = believed ? readAt(state.believed?.at, now) : undefined;
  const doubted = unsaid && !stale ? w.stirNotSaid(value) : uncounted(value, state, words);
  const isDrawn = window && !foretold && (believed || !stale);
  return {
    label: [hasMovedOn(state) ? w.factLastReading : w.factGravity],
    text: believed
      ? [...w.gravityFact(value, u95, foretold ? null : window), ...ageOf(old, now, words)]
      : doubted,
    ...(isDrawn && {
      scale: {
        value,
        u95,
        believed,
        ...window,
        text: believed ? within : doubted,
        window: w.window(window),
        ...(old !== undefined && { under: w.ago(old) }),
      },
    }),
  };
};

/** How it flows; with the seconds and their window, when they were what told. */
const flowFact = (
  flow: NonNullable<Verdict['flow']>,
  { reasons }: Verdict,
  { efflux, look }: BucketState,
  { words, now }: { words: Words; now: Instant },
): Fact => {
  const w = words.verdict;
  const found = reasons.find(({ because }) => because === 'efflux');
  const timed = found?.because === 'efflux' ? found : undefined;
  const seen = [efflux, look].flatMap((one) => one?.at ?? []);
  const flowAt = seen.length > 0 ? instant(Math.max(...seen)) : undefined;
  const old = readAt(flowAt, now);
  const warmth = timed?.warmth;
  const under = present([warmth && w.atRoomWarmth(warmth.seconds), old !== undefined && w.ago(old)]);
  return {
    ...fact(w.factFlow, [...w.flowFact(flow), ...ageOf(old, now, words)]),
    ...(timed &&
      timed.seconds !== 'wont-run' && {
        scale: {
          value: warmth?.seconds ?? timed.seconds,
          u95: timed.u95 ?? 0,
          believed: true,
          ...timed.window,
          text: w.timedFact(timed.seconds, flow),
          window: w.secondsWindow(timed.window),
          ...(under.length > 0 && { under: join(under, ', ') }),
        },
      }),
  };
};

/** At most three facts that the step is based on. */
export const factsOf = (
  verdict: Verdict,
  state: BucketState,
  unsaid: boolean,
  { words, now }: Asking,
): Fact[] => {
  const w = words.verdict;
  const { gravity, flow, hoursSinceStir, window, predicted } = verdict;
  const isOld = hasMovedOn(state);
  const foretold = gravity?.believed && !isOld && verdict.rule !== 'changed' ? null : predicted;
  const shown = isOld ? window : null;
  return present([
    readingFact(verdict, state, { words, now, unsaid, foretold: foretold !== null }),
    foretold && {
      ...fact(w.factPredicted, w.gravityFact(foretold.value, foretold.u95, shown)),
      ...(shown && {
        scale: {
          ...foretold,
          believed: true,
          ...shown,
          text: w.gravityFact(foretold.value, foretold.u95, null),
          window: w.window(shown),
        },
      }),
    },
    // After a predicted change an older flow says nothing, unless the grid decided.
    flow && (!foretold || verdict.rule === 'grid') && flowFact(flow, verdict, state, { words, now }),
    stirAgain(verdict, state, words) ??
      fact(
        w.factStir,
        hoursSinceStir === null
          ? w.neverStirred(state.voided?.by === 'frozen')
          : w.stirredAgo(hoursSinceStir),
      ),
  ]).slice(0, 3);
};
