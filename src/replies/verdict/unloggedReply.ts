import { present } from '../../present.ts';
import { fact, pressToEdit } from '../../contract/replyParts.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { evaporationOf } from '../../studio/bucket/evaporationOf.ts';
import { days, entryId, instant, since, type Instant, type StreamNo } from '../../studio/ids.ts';
import type { Json } from '../../studio/logbook/ports.ts';
import type { Studio } from '../../studio/settings/studio.ts';
import type { UnloggedChange, WithInterval } from '../../studio/contents/unloggedChange.ts';
import { wallOf } from '../../studio/time/wallTime.ts';
import type { Text } from '../../words/text/text.ts';
import type { Words } from '../../words/words.ts';
import type { Action, Reply } from '../../contract/contract.ts';
import { isoInstant } from '../../studio/time/isoInstant.ts';
import { twoDigits } from '../../text/twoDigits.ts';

const pair = ({ value, u95 }: WithInterval<number>) => ({ value, u95 });

const over1000 = ({ value, u95 }: WithInterval<number>) => ({
  value: Math.abs(value) / 1000,
  u95: u95 / 1000,
});

/** An unlogged change as `data`: litres and grams, for the whole pail or for each litre. */
export const unloggedData = (change: UnloggedChange, bucket: StreamNo): { [key: string]: Json } => ({
  what: change.what,
  orElse: change.orElse,
  ...(change.water && {
    [change.each === 'pail' ? 'litres' : 'litresPerLitre']: over1000(change.water),
    direction: change.water.value < 0 ? 'out' : 'in',
  }),
  ...(change.powder && {
    [change.each === 'pail' ? 'powderGrams' : 'powderGramsPerLitre']: pair(change.powder),
  }),
  from: isoInstant(change.from.at),
  to: isoInstant(change.to.at),
  between: [entryId(bucket, change.from.seq), entryId(bucket, change.to.seq)],
  foundBy: entryId(bucket, change.found.seq),
  ...(change.perDay && {
    mlPerDay: pair(change.perDay),
    readings: change.perDay.readings,
  }),
});

/** Rounded to the first digit of its uncertainty, so that no false precision is logged. */
const rounded = ({ value, u95 }: WithInterval<number>): number => {
  const step = u95 > 1 ? 10 ** Math.floor(Math.log10(u95)) : 1;
  return Math.max(1, Math.round(Math.abs(value) / step) * step);
};

/** A time within the span, on a whole minute of the studio's clock if there is one. */
const timeWithin = ({ from, to }: UnloggedChange, zone: string): string => {
  const middle = instant(Math.round((from.at + to.at) / 2));
  if (middle - (middle % 60_000) <= from.at) return isoInstant(middle);
  const { year, month, day, hour, minute } = wallOf(middle, zone);
  return `${year}-${twoDigits(month)}-${twoDigits(day)} ${twoDigits(hour)}:${twoDigits(minute)}`;
};

/** A line to log what was forgotten, if there is one likely cause; opened for changing first. */
const logAction = (
  change: UnloggedChange,
  bucket: StreamNo,
  { words, studio }: { words: Words; studio: Studio },
): Action[] => {
  const w = words.unlogged;
  const { units } = studio;
  const of = (amount: WithInterval<number> | undefined) =>
    amount && change.each === 'pail' ? rounded(amount) : undefined;
  const [ml, g] = [of(change.water), of(change.powder)];
  const log = (label: Text, what: string, amount: number | undefined, unit: string): Action[] => [
    pressToEdit(label, 'added', {
      bucket: String(bucket),
      what,
      amount: amount === undefined ? undefined : `${amount}${unit}`,
      when: timeWithin(change, studio.zone),
    }),
  ];
  switch (change.what) {
    case 'water-in':
      return log(w.logWater(ml, false, units), 'water', ml, 'ml');
    case 'water-out':
      return log(w.logWater(ml, true, units), 'draw-off', ml, 'ml');
    case 'dry-in':
      return log(w.logDry(g, units), 'dry', g, 'g');
    default:
      return [];
  }
};

/** The reply's part on one unlogged change. */
export const unloggedReply = (
  change: UnloggedChange,
  bucket: StreamNo,
  asking: { words: Words; studio: Studio },
): Required<Pick<Reply, 'facts' | 'reasons' | 'actions' | 'data'>> => {
  const { words, studio } = asking;
  const w = words.unlogged;
  return {
    facts: [fact(w.fact, w.sentence(change, studio.units))],
    reasons: present([
      change.orElse.length > 0 && w.alike(change),
      change.perDay && w.rate(change.perDay, change.each, studio.units),
    ]),
    actions: logAction(change, bucket, asking),
    data: unloggedData(change, bucket),
  };
};

/** How long a card shows a change as news: common practice. */
const newsLasts = days(30);

/** The last unlogged change, while it is news. */
export const recentUnlogged = ({ unlogged }: BucketState, now: Instant): UnloggedChange | undefined => {
  const last = unlogged?.at(-1);
  return last && since(last.found.at, now) <= newsLasts ? last : undefined;
};

/** A card's lines on mass balance: the last unlogged change, and how fast the bucket dries out. */
export const accountOf = (
  state: BucketState,
  { words, studio, now }: { words: Words; studio: Studio; now: Instant },
): Required<Pick<Reply, 'facts' | 'reasons' | 'data'>> => {
  const w = words.unlogged;
  const last = recentUnlogged(state, now);
  const drying = evaporationOf(state);
  return {
    facts: present([
      last && fact(w.fact, w.sentence(last, studio.units)),
      drying && fact(w.factEvaporation, w.rate(drying, drying.each, studio.units)),
    ]),
    reasons: last && last.orElse.length > 0 ? [w.alike(last)] : [],
    data: {
      ...(state.unlogged && { unlogged: state.unlogged.map((one) => unloggedData(one, state.no)) }),
      ...(drying && {
        evaporation: {
          [drying.each === 'pail' ? 'mlPerDay' : 'mlPerDayPerLitre']: pair(drying),
          readings: drying.readings,
          since: isoInstant(drying.since),
        },
      }),
    },
  };
};

/** The changes in one state that the other lacks. */
const changesMissingIn = (one: BucketState, other: BucketState): UnloggedChange[] =>
  (one.unlogged ?? []).filter(({ to }) => !other.unlogged?.some((same) => same.to.seq === to.seq));

/** The changes that an entry revealed, and whether it explained an earlier one. */
export const accountedBy = (
  before: BucketState,
  after: BucketState,
): { found: UnloggedChange | undefined; explained: boolean } => {
  const found = changesMissingIn(after, before).at(-1);
  // The list is bounded: if the oldest dropped out for a new one, that explains nothing.
  return { found, explained: !found && changesMissingIn(before, after).length > 0 };
};
