import { definedOnly } from '../definedOnly.ts';
import type { BucketState } from '../studio/bucket/bucketState.ts';
import type { UnitSystem } from '../studio/settings/studio.ts';
import { takeNamedBucket, takeNearBucket, takeNumberedBucket, type BucketSaid } from './plainBucket.ts';
import { takeQuantity, type PlainQuantity } from './plainQuantities.ts';
import { isEmptyWord, substances, takeOut, takeUnstirred, verbOf, type Verb } from './plainVerbs.ts';
import {
  escaped,
  takeAfterStir,
  takeCup,
  takeLook,
  takeSights,
  takeStandardCup,
  takeStrangeCup,
  takeWhen,
} from './plainSights.ts';
import { PlainText, plainLine } from './takePlain.ts';
import { unitsNamed } from './tradeUnits.ts';

/** What a studio's plain lines may name. */
export interface PlainWorld {
  buckets: readonly BucketState[];
  units: UnitSystem;
  /** Names of the studio's weighing cups and flow cups. */
  vessels: readonly string[];
  cups: readonly string[];
}

export type PlainCommand = 'reading' | 'added' | 'stirred' | 'sieved';

export type PlainLine =
  /** Nothing that could be logged: a question, or words about something else. */
  | { kind: 'none' }
  | { kind: 'too-long'; most: number }
  /** A bucket's name and nothing else. */
  | { kind: 'bucket'; bucket: BucketSaid }
  /** Two buckets in one line, and neither poured into the other. */
  | { kind: 'several'; buckets: readonly BucketSaid[] }
  | {
      kind: 'draft';
      command: PlainCommand;
      /** The options as the command reads them; the bucket is apart. */
      typed: Record<string, string>;
      bucket: BucketSaid | undefined;
      /** What was not understood, as it was typed. */
      unread: string[];
      /** Something came out, not in. */
      out?: boolean;
      /** A number without a unit, and what it is most likely. */
      maybe?: { option: string; value: string; typed: string };
    };

/** Whoever writes more than this tells a story; which of its numbers count, nobody can say. */
const longest = 600;
/** More words than this beside the numbers make it talk about something else. */
const mostUnread = 8;

const asks =
  /\?\s*$|^\s*(?:why|how|what|when|where|which|who|should|shall|can|could|may|is|are|do|does|did|will|would|help|if)\b|\btoo (?:thin|thick|watery|runny)\b/i;

const takeVerbs = (text: PlainText): ReadonlySet<Verb> => {
  const found = new Set<Verb>();
  for (const { word, from, to } of text.words().toReversed()) {
    const verb = verbOf(word);
    if (verb === undefined) continue;
    found.add(verb);
    text.cut(from, to);
  }
  return found;
};

const takeQuantities = (text: PlainText, units: UnitSystem): PlainQuantity[] => {
  const found: PlainQuantity[] = [];
  for (let next = takeQuantity(text, units); next; next = takeQuantity(text, units)) found.push(next);
  return found;
};

/** Gives each quantity to the first of these options that it may be and that is still free. */
const share = (
  quantities: readonly PlainQuantity[],
  options: readonly (readonly [
    option: string,
    is: PlainQuantity['is'][number],
    fits?: (one: PlainQuantity) => boolean,
  ])[],
): { typed: Record<string, string>; loose: PlainQuantity[] } => {
  const typed: Record<string, string> = {};
  const loose: PlainQuantity[] = [];
  for (const quantity of quantities) {
    const to = options.find(
      ([option, is, fits]) =>
        typed[option] === undefined && quantity.is.includes(is) && (fits?.(quantity) ?? true),
    );
    if (to) typed[to[0]] = quantity.typed;
    else loose.push(quantity);
  }
  return { typed, loose };
};

const isSeconds = ({ typed }: PlainQuantity) =>
  !/\d ?(?:m(?:ins?|inutes?)?|h(?:rs?|ours?)?|d(?:ays?)?)$/i.test(typed);

/** Words that are left between what was read, without those that carry nothing at their ends. */
const unreadOf = (text: PlainText): string[] =>
  text.runs().flatMap((run) => {
    const words = run.split(' ');
    while (words.length > 0 && isEmptyWord(words[0] ?? '')) words.shift();
    while (words.length > 0 && isEmptyWord(words.at(-1) ?? '')) words.pop();
    return words.length === 0 ? [] : [words.join(' ')];
  });

/** What a bare number most likely is, when that is still missing: seconds, or a full cup's weight. */
const maybeOf = (loose: readonly PlainQuantity[], typed: Record<string, string>, weighs: boolean) => {
  const bare = loose.filter(({ is }) => is.length === 0);
  const [one] = bare;
  if (!one || bare.length > 1 || loose.length > 1) return undefined;
  const { number } = one;
  if (typed['seconds'] === undefined && number >= 3 && number <= 90)
    return { option: 'seconds', value: one.typed, typed: one.typed };
  if (
    weighs &&
    typed['weight'] === undefined &&
    typed['gravity'] === undefined &&
    number > 90 &&
    number < 2000
  )
    return { option: 'weight', value: `${one.typed}g`, typed: one.typed };
  return undefined;
};

/** A whole number that is left over, when no bucket was named: its number. */
const numberOfBucket = (
  quantities: readonly PlainQuantity[],
  buckets: readonly BucketState[],
): { bucket: BucketSaid; at: PlainQuantity } | undefined => {
  const [one, ...others] = quantities.filter(({ is }) => is.length === 0);
  if (!one || others.length > 0 || !Number.isInteger(one.number)) return undefined;
  const isSafe = quantities.length === 1 || quantities.some(({ is }) => is.includes('duration'));
  const found = buckets.filter(({ no }) => no === one.number);
  return isSafe && found.length > 0
    ? { bucket: { buckets: found, typed: one.typed, guessed: true }, at: one }
    : undefined;
};

const household =
  '(?=(?:cups?|litres?|liters?|pints?|quarts?|gallons?|kilos?|teaspoons?|tablespoons?|tsps?|tbsps?)\\b)';
const figures: readonly (readonly [RegExp, string])[] = [
  [/[?!]+\s*$/, ''],
  [/\b(?:water or stir|stir or water)\b/i, ' '],
  [new RegExp(`\\b(?:an? )?half (?:of )?(?:an? )?${household}`, 'i'), '1/2 '],
  [new RegExp(`\\b(?:an? )?quarter (?:of )?(?:an? )?${household}`, 'i'), '1/4 '],
  [new RegExp(`\\b(?:an?|one) ${household}`, 'i'), '1 '],
  [new RegExp(`\\btwo ${household}`, 'i'), '2 '],
  [new RegExp(`\\bthree ${household}`, 'i'), '3 '],
];

/** `half a cup` as `1/2 cup`, and without what asks or shouts. */
const inFigures = (line: string): string =>
  figures.reduce((text, [words, digits]) => text.replace(words, digits), line);

const measured: Parameters<typeof share>[1] = [
  ['gravity', 'gravity'],
  ['seconds', 'duration', isSeconds],
  ['weight', 'mass'],
  ['temperature', 'temperature'],
  ['gap', 'length', ({ is }) => !is.includes('duration')],
];

/** Reads a line that is no command as a draft of one. Nothing is guessed that the draft does not show. */
export const readPlainLine = (typed: string, { buckets, units, vessels, cups }: PlainWorld): PlainLine => {
  const line = plainLine(typed.slice(0, 8 * longest));
  if (line === '') return { kind: 'none' };
  if (line.length > longest) return { kind: 'too-long', most: longest };
  const isQuestion = asks.test(line);
  const text = new PlainText(inFigures(line));
  const isUnit = (word: string) => unitsNamed(word, units).length > 0;
  const isNoNick = (word: string) => isUnit(word) || verbOf(word) !== undefined;
  const one = takeNamedBucket(text, buckets, isNoNick) ?? takeNumberedBucket(text, buckets, isUnit);
  const two = one && (takeNamedBucket(text, buckets, isNoNick) ?? takeNumberedBucket(text, buckets, isUnit));
  const isFrom = (said: BucketSaid) =>
    new RegExp(`\\b(?:from|of) (?:the |bucket )*${escaped(said.typed)}(?![\\p{L}\\d])`, 'iu').test(line);
  const [named, source] = one && two && isFrom(one) && !isFrom(two) ? [two, one] : [one, two];
  const when = takeWhen(text);
  const vessel = takeCup(text, vessels);
  const cup = takeCup(text, cups) ?? takeStandardCup(text);
  const strange = (vessel ?? cup) ? undefined : takeStrangeCup(text);
  const after = takeAfterStir(text);
  const all = takeQuantities(text, units);
  const unstirred = takeUnstirred(text);
  const out = takeOut(text, line);
  const substance = substances.find(([words]) => words.test(text.left));
  const verbs = takeVerbs(text);
  const [look, seen] = [takeLook(text), takeSights(text)];
  const lone = named ? undefined : numberOfBucket(all, buckets);
  const bucket = named ?? lone?.bucket ?? takeNearBucket(text, buckets);
  const quantities = all.filter((one) => one !== lone?.at);

  const isBare = [quantities.length > 0, verbs.size > 0, out, after, look, seen, substance, when].every(
    (one) => !one,
  );
  if (bucket && isBare && unreadOf(text).length === 0) return { kind: 'bucket', bucket };
  if (isQuestion) return { kind: 'none' };
  const isPoured = source !== undefined && isFrom(source) && (verbs.has('add') || out);
  if (named && source && !isPoured) return { kind: 'several', buckets: [named, source] };

  const draft = (
    command: PlainCommand,
    { typed, loose }: ReturnType<typeof share>,
    more: { [option: string]: string | undefined } = {},
    maybe?: ReturnType<typeof maybeOf>,
  ): PlainLine => {
    const numbers = loose.map((one) => one.typed).filter((one) => one !== maybe?.typed);
    const unread = [...numbers, ...unreadOf(text)];
    const options = definedOnly({
      ...typed,
      ...more,
      when,
      vessel: vessel ?? strange,
      cup,
      note: after?.note,
    });
    const heard = Object.keys(options).length + verbs.size + Number(out);
    if (unread.join(' ').split(' ').length > mostUnread && heard < 3) return { kind: 'none' };
    return { kind: 'draft', command, typed: options, bucket, unread, ...definedOnly({ maybe }) };
  };

  const isBareAmount = quantities.length === 1 && quantities.every(({ is }) => is.length === 0);
  const isAmount = ({ is }: PlainQuantity) => is.includes('volume') || is.includes('mass');
  if ((verbs.has('add') || out) && (quantities.some(isAmount) || substance || isPoured || isBareAmount)) {
    const [words, said] = substance ?? [];
    if (words) text.take(words);
    const moved = out ? (said === 'water' ? 'draw-off' : said === 'glaze' ? 'taken' : undefined) : said;
    const other = !out && unreadOf(text).length > 0 ? 'other' : undefined;
    const amounts = share(quantities, [
      ['amount', 'volume'],
      ['amount', 'mass'],
    ]);
    const [strange] = amounts.loose.filter((loose) => loose.is.length === 0);
    const unread = strange && amounts.typed['amount'] === undefined ? strange : undefined;
    if (unread) amounts.loose.splice(amounts.loose.indexOf(unread), 1);
    if (unread?.strange !== undefined)
      text.take(new RegExp(`(?<![\\p{L}])${escaped(unread.strange)}(?![\\p{L}])`, 'iu'));
    const amount = unread && `${unread.typed} ${unread.strange ?? ''}`.trim();
    const [from] = source?.buckets ?? [];
    // Glaze from another bucket is glaze, whatever else was said.
    const what = from ? 'glaze' : (moved ?? other);
    return {
      ...draft('added', amounts, { what, ...(amount && { amount }), ...(from && { from: String(from.no) }) }),
      ...(out && !from && { out }),
    };
  }
  const shared = share(quantities, measured);
  const isMeasured = Object.keys(shared.typed).length > 0;
  if (verbs.has('sieve') && !isMeasured)
    return draft(
      'sieved',
      share(
        quantities.map((one) => ({
          ...one,
          typed: one.is.includes('mesh') ? String(one.number) : one.typed,
        })),
        [['mesh', 'mesh']],
      ),
    );
  const maybe = maybeOf(shared.loose, shared.typed, vessels.length > 0);
  const isLook = (look ?? seen) !== undefined && (verbs.size > 0 || bucket !== undefined);
  const isBareNumber =
    maybe !== undefined && (verbs.has('read') || (bucket !== undefined && unreadOf(text).length === 0));
  if (isMeasured || isLook || isBareNumber) {
    const stirred = unstirred
      ? 'no'
      : after
        ? after.just
          ? 'yes'
          : undefined
        : verbs.has('stir')
          ? 'yes'
          : undefined;
    return draft('reading', shared, { look, seen, stirred }, maybe);
  }
  if (!verbs.has('stir') || unstirred) return { kind: 'none' };
  const minutes = share(quantities, [['minutes', 'duration']]);
  const tool = text.take(/\b(?:with )?(?:a |the |by )?(drill|mixer|whisk|hand|paddle|stick|machine)\b/i)?.[1];
  return draft('stirred', minutes, { with: tool?.toLowerCase() });
};
