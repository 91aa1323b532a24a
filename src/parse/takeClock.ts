import { dayParts, type DayPartName } from './takePart.ts';

const HOUR = 60;
const NOON = 12 * HOUR;
const DAY = 24 * HOUR;

/** A clock time in minutes since midnight, or the two that it may mean: `at 9`, `midnight`. */
export type Clock = readonly number[];

/** How far outside its part of the day a clock time may be before the two contradict each other. */
const SLACK = 3 * HOUR;

const isDark = (name: DayPartName): boolean => name === 'evening' || name === 'night' || name === 'tonight';

/** Puts hours up to 12 into the right half of the day: at night, 9 is 21:00, and 1 is after midnight. */
const halfMeant = (name: DayPartName, hour: number): 'a' | 'p' => {
  if (name === 'morning') return 'a';
  return name === 'afternoon' || hour % 12 >= 5 ? 'p' : 'a';
};

const agrees = (minutes: number, name: DayPartName): boolean => {
  const { from, to } = dayParts[name];
  return minutes <= to + SLACK && (name === 'morning' || minutes >= from - SLACK);
};

interface Figures {
  hour: number;
  minute: number;
  half: string | undefined;
  /** Whether the way it is written leaves open which half of the day is meant. */
  isLoose: boolean;
}

const clockOf = ({ hour, minute, half, isLoose }: Figures, name?: DayPartName): Clock | undefined => {
  if (minute > 59 || hour > 24 || (hour === 24 && minute > 0)) return undefined;
  if (half !== undefined && (hour > 12 || (hour === 0 && half === 'p'))) return undefined;
  const told = half ?? (name !== undefined && hour <= 12 ? halfMeant(name, hour) : undefined);
  const early = (hour % 12) * HOUR + minute;
  if (told === undefined)
    return isLoose && hour >= 1 && hour <= 12 ? [early, early + NOON] : [hour * HOUR + minute];
  const minutes = told === 'p' ? early + NOON : early;
  if (name === undefined) return [minutes];
  const inPart = isDark(name) && minutes < NOON ? minutes + DAY : minutes;
  return agrees(inPart, name) ? [inPart] : undefined;
};

const DAY_WORD = '(?:day|today|tomorrow|night|mon|tues?|wed|thu(?:rs?)?|fri|sat|sun)';

const CLOCK = new RegExp(
  String.raw`(?:\bat |@ ?|(?<!\S))(?:` +
    [
      String.raw`(?<hour12>\d{1,2})(?:[:.h](?<minute12>\d{2}))? ?(?<half>[ap])(?:\.? ?m\b\.?|\b)`,
      String.raw`(?<hour24>\d{1,2})[:h](?<minute24>\d{2})(?![:\d])`,
      String.raw`(?<bare>(?<=\bat |@ ?)\d{1,2}(?!\S)|(?<=${DAY_WORD} |^)\d{1,2}$)`,
      String.raw`(?<word>noon|midday|midnight)\b`,
    ].join('|') +
    ')',
  'g',
);

/** Takes the clock time out of a phrase that names a part of the day, or none. Undefined for two, or an impossible one. */
export const takeClock = (
  phrase: string,
  name?: DayPartName,
): { clock: Clock | undefined; rest: string } | undefined => {
  const matches = [...phrase.matchAll(CLOCK)];
  const [match] = matches;
  if (!match) return { clock: undefined, rest: phrase };
  if (matches.length > 1) return undefined;
  const { hour12, minute12, half, hour24, minute24, bare, word } = match.groups ?? {};
  const rest = phrase.replace(match[0], ' ').replace(/\s+/g, ' ').trim();
  if (word === 'midnight') return { clock: name !== undefined && isDark(name) ? [DAY] : [0, DAY], rest };
  if (word !== undefined) return { clock: [NOON], rest };
  const figures = {
    hour: Number(hour12 ?? hour24 ?? bare),
    minute: Number(minute12 ?? minute24 ?? 0),
    half,
    // 21:30 and 09:30 are 24-hour times; 9:30 and 9 may be in the evening
    isLoose: bare !== undefined || hour24?.length === 1,
  };
  const clock = clockOf(figures, name);
  return clock && { clock, rest };
};
