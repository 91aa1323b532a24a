import { addDays, type CivilDay } from '../studio/time/civilDay.ts';
import { instant, minutes, type Instant } from '../studio/ids.ts';
import { instantOnDay, wallOf, type WallTime } from '../studio/time/wallTime.ts';
import { daysMeant } from './daysMeant.ts';
import { readIsoInstant } from '../studio/time/isoInstant.ts';
import { asciiText } from './readNumeral.ts';
import { readDuration } from './readQuantity.ts';
import { takeClock } from './takeClock.ts';
import { dayParts, takePart, type DayPart } from './takePart.ts';

/** Why a time could not be parsed, and what was typed. */
export type InstantProblem = { typed: string } & (
  | { kind: 'empty' }
  | { kind: 'not-a-time' }
  /** `at 9` or `3/4`: the two instants that it may mean. */
  | { kind: 'ambiguous'; either: Instant; or: Instant }
  /** It is in the future, but a past time was wanted. */
  | { kind: 'future'; at: Instant }
  /** It is in the past, but a future time was wanted. */
  | { kind: 'past'; at: Instant }
);

/** `exact` is false if only a day or a part of one was given, as in `yesterday` or `this morning`. */
export type ReadInstant = { ok: true; value: Instant; exact: boolean } | { ok: false; why: InstantProblem };

export interface When {
  now: Instant;
  zone: string;
  /** Whether a past or a future time is wanted. */
  looks: 'back' | 'ahead';
}

/** Clocks of phones and servers differ: a time this little on the wrong side of now counts as now. */
const TOLERANCE = minutes(2);
/** Before this hour, "tonight" and "last night" may still mean the evening that has just passed. */
const SMALL_HOURS = 5;

/** The earliest, the usual and the latest instant that a phrase may mean. */
type Span = readonly [from: Instant, usual: Instant, to: Instant];

type Judged = { ok: true; value: Instant } | { ok: false; kind: 'future' | 'past'; at: Instant };

/** Of spans in order: looking back, the latest that has started; looking ahead, the earliest that has not ended. */
const judge = (spans: readonly Span[], { now, looks }: When): Judged | undefined => {
  if (looks === 'back') {
    const begun = spans.findLast(([from]) => from <= now + TOLERANCE);
    if (begun) return { ok: true, value: instant(Math.min(begun[1], now)) };
    return spans[0] && { ok: false, kind: 'future', at: spans[0][1] };
  }
  const open = spans.find(([, , to]) => to >= now - TOLERANCE);
  if (open) return { ok: true, value: instant(Math.max(open[1], now)) };
  const last = spans.at(-1);
  return last && { ok: false, kind: 'past', at: last[1] };
};

const answer = (
  alternatives: readonly (readonly Span[])[],
  when: When,
  typed: string,
  exact: boolean,
): ReadInstant => {
  const judged = alternatives.map((spans) => judge(spans, when)).filter((one) => one !== undefined);
  const [either, or] = judged.filter((one) => one.ok);
  if (either && or && either.value !== or.value)
    return { ok: false, why: { kind: 'ambiguous', either: either.value, or: or.value, typed } };
  if (either) return { ok: true, value: either.value, exact };
  const refused = judged.find((one) => !one.ok);
  return {
    ok: false,
    why: refused ? { kind: refused.kind, at: refused.at, typed } : { kind: 'not-a-time', typed },
  };
};

const spanOf = (day: CivilDay, { from, usual, to }: DayPart, zone: string): Span => [
  instantOnDay(day, from, zone),
  instantOnDay(day, usual, zone),
  instantOnDay(day, to, zone),
];

const COUNTED_DAYS = /^\S+ ?(?:d|days?|w|wks?|weeks?|months?|years?)$/;

/** `2h ago`, `in 20 min`: elapsed time, which a clock change does not affect. */
const elapsed = (phrase: string, now: Instant): Instant | undefined => {
  if (/^(?:just |right )?now$/.test(phrase)) return now;
  const { ago, ahead } = /^(?<ago>.+) ago$|^(?:in )?(?<ahead>.+?)(?: from now)?$/.exec(phrase)?.groups ?? {};
  const span = ago ?? (/^in | from now$/.test(phrase) ? ahead : undefined);
  if (span === undefined || COUNTED_DAYS.test(span)) return undefined;
  const read = readDuration(span);
  return read.ok ? instant(ago === undefined ? now + read.value : now - read.value) : undefined;
};

/** The days that `tonight`, `last night` or a bare `9pm` may mean. After midnight that includes yesterday. */
const nearDays = (days: number | undefined, today: WallTime): CivilDay[] => {
  if (days === undefined) return [addDays(today, -1), today, addDays(today, 1)];
  const day = addDays(today, days);
  return today.hour < SMALL_HOURS ? [addDays(day, -1), day] : [day];
};

/**
 * Parses a time as people write it: `now`, `last night 9pm`, `2h ago`, `yesterday 18:30`, `Tue 9pm`, an ISO instant, or
 * an ISO local time in the studio's zone. All of the text must be understood.
 */
export const readInstant = (typed: string, when: When): ReadInstant => {
  const { now, zone } = when;
  const phrase = asciiText(typed).toLowerCase().replaceAll(',', ' ').replace(/\s+/g, ' ').trim();
  if (phrase === '') return { ok: false, why: { kind: 'empty', typed } };
  const straight = readIsoInstant(phrase, zone) ?? elapsed(phrase, now);
  if (straight !== undefined) return answer([[[straight, straight, straight]]], when, typed, true);

  const today = wallOf(now, zone);
  const part = takePart(phrase);
  const taken = takeClock(part.rest, part.name);
  if (!taken || (part.days !== undefined && taken.rest !== '')) return answer([], when, typed, false);
  const { alternatives, counted } =
    taken.rest === ''
      ? { alternatives: [nearDays(part.days, today)], counted: false }
      : daysMeant(taken.rest, today);
  const wholeDay = { from: 0, usual: counted ? today.hour * 60 + today.minute : 12 * 60, to: 24 * 60 - 1 };
  const vague = part.name === undefined ? wholeDay : dayParts[part.name];
  const times = taken.clock?.map((clock) => ({ from: clock, usual: clock, to: clock })) ?? [vague];
  const spans = alternatives.flatMap((days) =>
    times.map((time) => days.map((day) => spanOf(day, time, zone))),
  );
  return answer(spans, when, typed, taken.clock !== undefined);
};
