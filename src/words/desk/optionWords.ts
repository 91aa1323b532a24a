import type { Instant } from '../../studio/ids.ts';
import type { QuantityProblem } from '../../parse/quantityProblem.ts';
import type { InstantProblem } from '../../parse/readInstant.ts';
import { slippedPoint } from '../text/slippedPoint.ts';
import { said, t, type Text } from '../text/text.ts';

const whatIs = {
  mass: 'a weight',
  volume: 'a volume',
  length: 'a length',
  duration: 'a time',
  temperature: 'a temperature',
} as const;

const example = {
  mass: '246.2g',
  volume: '350 ml',
  length: '7 cm',
  duration: '3 min',
  temperature: '18C',
} as const;

/** What is wrong with what was typed; with an example of the option's own, where any number of its kind would do. */
const quantity = (why: QuantityProblem, like?: string): Text => {
  const typed = said(why.typed);
  const instead = like === undefined ? '' : ` Type it like ${like}.`;
  switch (why.kind) {
    case 'empty':
      return t`Nothing was typed.`;
    case 'not-a-number':
      return t`“${typed}” is not a number.${[instead]}`;
    case 'negative':
      return t`“${typed}” is below zero.${[instead]}`;
    case 'no-unit':
      return t`“${typed}” has no unit. Say what it is, such as ${[example[why.wanted]]}.`;
    case 'unknown-unit':
      return why.near === undefined
        ? t`I don't know the unit “${said(why.unit)}” in “${typed}”. Try ${[example[why.wanted]]}.`
        : t`I don't know the unit “${said(why.unit)}” in “${typed}”. Did you mean ${[why.near]}?`;
    case 'wrong-dimension':
      return t`“${typed}” is ${[whatIs[why.is]]}. This needs ${[whatIs[why.wanted]]}, such as ${[example[why.wanted]]}.`;
    case 'ambiguous':
      return t`“${typed}” can be read two ways. Write it without the comma or colon, such as 1500 ml, 1.5 l or 90 min.`;
    case 'not-a-range':
      return t`“${typed}” is not a range. Write it from low to high, such as ${[like ?? '12-16']}.`;
    case 'upside-down':
      return t`The low end comes first. Did you mean ${why.high}-${why.low} by “${typed}”?`;
  }
};

const instant = (why: InstantProblem): Text => {
  const typed = said(why.typed);
  switch (why.kind) {
    case 'future':
      return t`“${typed}” has not happened yet.`;
    case 'past':
      return t`“${typed}” is in the past. Type a time that is still to come, such as tonight 7pm or tomorrow 10:00.`;
    case 'ambiguous':
      return t`Which do you mean by “${typed}”?`;
    case 'empty':
      return t`Nothing was typed.`;
    case 'not-a-time':
      return t`I can't read “${typed}” as a time. Try: now, 2h ago, last night 9pm, yesterday 18:30.`;
  }
};

/** The same words with an hour after them, when that can be read: “tonight” wants “tonight 7pm”. */
const hourWith = (typed: string, example: string): Text => {
  const hour = /\S+$/.exec(example)?.[0] ?? '';
  return /^[\p{L} ]{3,20}$/u.test(typed.trim()) ? t`“${said(typed.trim())} ${[hour]}”` : t`“${[example]}”`;
};

export const optionWords = {
  quantity,
  instant,
  notPositive: (typed: string): Text => t`“${said(typed)}” is too low: it must be more than 0.`,
  tooLow: (typed: string, low: string): Text => t`“${said(typed)}” is too low. The lowest is ${[low]}.`,
  tooHigh: (typed: string, high: string): Text => t`“${said(typed)}” is too high. The highest is ${[high]}.`,
  windowOutside: (typed: string, low: string, high: string): Text =>
    t`“${said(typed)}” is not a usable window. Type two different numbers between ${[low]} and ${[high]}, the lower one first.`,
  absurd: (typed: string): Text => t`“${said(typed)}” is more than a glaze room holds. Is the unit wrong?`,
  amount: (why: QuantityProblem, like: string): Text =>
    why.kind === 'no-unit'
      ? t`“${said(why.typed)}” has no unit. Say millilitres or grams: 450 ml, 300 g.`
      : quantity(why, like),
  notOneOf: (typed: string, choices: string[]): Text =>
    t`“${said(typed)}” is not one of these: ${[choices.join(', ')]}.`,
  yesOrNo: (typed: string): Text => t`“${said(typed)}” is neither yes nor no.`,
  noBucketYet: t`There is no bucket yet. A keeper can set one up: /bucket add name:"Gull Grey" pail:19l gravity:1.42-1.46.`,
  noBucket: (typed: string, near: string | undefined): Text =>
    near === undefined
      ? t`There is no bucket “${said(typed)}”. /bucket list shows all buckets.`
      : t`There is no bucket “${said(typed)}”. Did you mean ${said(near)}? /bucket list shows all buckets.`,
  whichBucket: (typed: string): Text => t`Which bucket is “${said(typed)}”?`,
  noSuch: (what: 'vessel' | 'cup' | 'member' | 'entry', typed: string, have: string[]): Text =>
    have.length === 0
      ? t`There is no ${[what]} “${said(typed)}” yet.`
      : t`There is no ${[what]} “${said(typed)}”. Choose from ${said(have.join(', '))}.`,
  whichOne: (typed: string): Text => t`Which one is “${said(typed)}”?`,
  whichMember: (typed: string): Text =>
    t`Who is “${said(typed)}”? Nothing was changed. Pick the member; on Discord, type @ and pick from the list.`,
  memberSince: (name: string, at: Instant): Text => t`${said(name)}, here since ${{ at, show: 'day' }}`,
  notMet: t`The bot doesn’t know that member yet. Ask them to use it once, for example with /help. Then try again.`,
  notAnEntry: (typed: string): Text =>
    t`“${said(typed)}” is not an entry. Entries look like 7-41; /bucket log shows them.`,
  notAZone: (typed: string): Text =>
    t`“${said(typed)}” is not a time zone that I know. Type a large city in yours, such as Lisbon, or a zone such as America/St_Johns.`,
  tooLong: (most: number, length: number): Text =>
    t`That is ${length} characters, and ${most} is the most. Nothing was saved. Shorten it and send it again.`,
  gravityOutside: (typed: string, value = Number(typed)): Text =>
    t`“${said(typed)}” can't be the gravity of a glaze: water is 1, and no glaze is over 2.5. ${[slippedPoint(value) ? `Was it ${slippedPoint(value)}? ` : '']}Is it in °Bé (type 44Be), or in grams?`,
  whatTime: (typed: string, example: string): Text =>
    t`“${said(typed)}” has no time of day, and the hour matters here. Add it, such as ${hourWith(typed, example)}.`,
  tooFar: (typed: string, looks: 'back' | 'ahead'): Text =>
    looks === 'back'
      ? t`“${said(typed)}” is more than a year ago. Is the year right?`
      : t`“${said(typed)}” is more than a year ahead. Is the year right?`,
};
