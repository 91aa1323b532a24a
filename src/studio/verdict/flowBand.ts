import { coverage95 } from '../../glaze/statistics/normal.ts';
import { scatterOf } from '../belief/repeats.ts';
import { usualSeconds } from '../belief/priors.ts';
import { cupReads } from '../bucket/readsOf.ts';
import { definedOnly } from '../../definedOnly.ts';
import type { CupTime, FlowLook } from '../bucket/bucketEvent.ts';
import { roomTemperature } from '../bucket/flocculantSolution.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { isDoseAtWork } from '../bucket/flowPoints.ts';
import { isForDipping, judgesFlow } from './judgedBy.ts';
import { since, type Instant } from '../ids.ts';
import { effluxAt20, timedAt } from '../bucket/effluxAt20.ts';
import { isWindowsCup, timeBand } from '../bucket/timeBand.ts';
import { readAt } from './readAt.ts';
import type { FlowBand, Reason } from './verdict.ts';

const lookBand: Record<FlowLook, FlowBand> = { thin: 'thin', right: 'in', thick: 'thick' };

/** The temperature of the bucket when it was timed, and what the cup would take at 20 °C; absent where nobody told. */
const warmthTimed = (state: BucketState): Extract<Reason, { because: 'efflux' }>['warmth'] => {
  const told = timedAt(state);
  if (told === undefined || told === roomTemperature) return undefined;
  const seconds = effluxAt20(state);
  return seconds === undefined || seconds === 'wont-run'
    ? undefined
    : { temperature: told, room: roomTemperature, seconds };
};

/** How exactly a cup time repeats; undefined until some were repeated. */
const secondsWithin = ({ belief }: BucketState, { cup, seconds }: CupTime): number | undefined =>
  seconds === 'wont-run' || !belief.repeats?.[cupReads(cup)]
    ? undefined
    : coverage95 * seconds * scatterOf(belief, cupReads(cup), usualSeconds);

const isOpposite = (one: FlowBand, other: FlowBand): boolean =>
  (one === 'thin' && other === 'thick') || (one === 'thick' && other === 'thin');

/**
 * The flow by cup and by finger, with the reasons. The cup decides, and a finger test that differs by one band is
 * mentioned. When one says thin and the other thick, the flow is unknown.
 */
export const flowBand = (
  state: BucketState,
  now: Instant,
): { band: FlowBand; at?: Instant; reasons: Reason[] } => {
  const { settings, efflux, look, unexpected } = state;
  if (!judgesFlow(settings))
    return { band: 'in', reasons: [{ because: 'flow-not-judged', use: settings.use }] };
  const reasons: Reason[] = [];
  // A gel thins when it is stirred: after a stir, an earlier `thick` no longer applies.
  const outlived = (band: FlowBand, { at, stirredSince }: { at: Instant; stirredSince?: true }) =>
    since(at, now) > settings.shelfLife ||
    (band === 'thick' && stirredSince === true) ||
    // The bucket may have held something else then.
    (unexpected !== undefined && at < unexpected.to.at);
  let byCup: FlowBand = 'unknown';
  if (efflux) {
    const { seconds, cup } = efflux;
    const window = settings.efflux;
    if (settings.cup !== undefined && !isWindowsCup(efflux, settings.cup))
      reasons.push({ because: 'other-cup', cup, windowCup: settings.cup });
    else if (!window) reasons.push({ because: 'efflux-no-window', seconds, cup });
    else {
      const warmth = warmthTimed(state);
      const band = timeBand(warmth?.seconds ?? seconds, window);
      if (!outlived(band, efflux)) {
        byCup = band;
        const u95 = secondsWithin(state, efflux);
        reasons.push({
          because: 'efflux',
          band,
          seconds,
          window,
          cup,
          ...readAt(efflux.at, now),
          ...definedOnly({ u95, warmth }),
        });
      }
    }
  }
  let byFinger: FlowBand = 'unknown';
  // How it hides the skin tells how it will coat in a dip.
  if (look && isForDipping(settings)) {
    const band = lookBand[look.look];
    if (!outlived(band, look)) {
      byFinger = band;
      reasons.push({ because: 'look', look: look.look, ...readAt(look.at, now) });
    }
  }
  if (isOpposite(byCup, byFinger))
    return {
      band: 'unknown',
      reasons: [...reasons, { because: 'contradict', efflux: byCup, look: byFinger }],
    };
  if (byCup !== 'unknown') {
    if (byFinger !== 'unknown' && byFinger !== byCup)
      reasons.push({ because: 'disagree', efflux: byCup, look: byFinger });
    return { band: byCup, ...definedOnly({ at: efflux?.at }), reasons };
  }
  // When a cup time could not be used, its reason is already there.
  if (byFinger === 'unknown' && reasons.length === 0) {
    const { lastAt, stirredIn } = state.flocculant;
    reasons.push(
      lastAt !== undefined && isDoseAtWork(state, now)
        ? { because: 'dose-at-work', at: lastAt, stirred: stirredIn !== undefined }
        : state.restedFlow
          ? { because: 'flow-at-rest', at: state.restedFlow.at }
          : { because: 'flow-unknown' },
    );
  }
  return { band: byFinger, ...definedOnly({ at: look?.at }), reasons };
};

/** Whether a bucket looks thick now; when nobody says, whether it did the last time. */
export const looksThick = (
  state: BucketState,
  { flow, look }: { flow?: CupTime; look?: FlowLook },
  now: Instant,
): boolean => {
  if (look === 'thick' || flow?.seconds === 'wont-run') return true;
  if (!flow && !look) return flowBand(state, now).band === 'thick';
  const { efflux: _efflux, look: _look, ...unseen } = state;
  return flowBand({ ...unseen, ...(flow && { efflux: { ...flow, at: now } }) }, now).band === 'thick';
};
