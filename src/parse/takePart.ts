import { definedOnly } from '../definedOnly.ts';

/** A part of the day in minutes since midnight. A night continues into the next morning. */
export interface DayPart {
  from: number;
  /** The time that is assumed if no clock time is given: common practice. */
  usual: number;
  to: number;
}

const dayPart = (from: number, usual: number, to: number): DayPart => ({
  from: from * 60,
  usual: usual * 60,
  to: to * 60,
});

export const dayParts = {
  morning: dayPart(5, 9, 12),
  afternoon: dayPart(12, 15, 18),
  evening: dayPart(17, 19, 22),
  night: dayPart(18, 21, 29),
  tonight: dayPart(17, 19, 29),
} satisfies Record<string, DayPart>;

export type DayPartName = keyof typeof dayParts;

const WORDS: readonly (readonly [words: RegExp, days?: number])[] = [
  [/\blast (?<name>night|evening)\b/, -1],
  [/\b(?<name>tonight)\b/, 0],
  [/\bthis (?<name>morning|afternoon|evening)\b/, 0],
  [/\b(?:in the |at )?(?<name>morning|afternoon|evening|night)\b/],
];

const isPart = (name: string | undefined): name is DayPartName => name !== undefined && name in dayParts;

/**
 * Takes the part of the day out of a lower-case phrase. `days` counts from today to its day, -1 in `last night`; it is
 * absent if the rest of the phrase names the day.
 */
export const takePart = (phrase: string): { name?: DayPartName; days?: number; rest: string } => {
  for (const [words, days] of WORDS) {
    const match = words.exec(phrase);
    const name = match?.groups?.['name'];
    if (!match || !isPart(name)) continue;
    const rest = phrase.replace(match[0], ' ').replace(/\s+/g, ' ').trim();
    return { name, rest, ...definedOnly({ days }) };
  }
  return { rest: phrase };
};
