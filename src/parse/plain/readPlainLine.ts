import { hazardsInName } from '../../glaze/materials/hazardWords.ts';
import { definedOnly } from '../../definedOnly.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { UnitSystem } from '../../studio/settings/studio.ts';
import { takeNamedBucket, takeNearBucket, takeNumberedBucket, type BucketSaid } from './plainBucket.ts';
import { takeQuantities, type PlainQuantity } from './plainQuantities.ts';
import { maybeOf, measured, numberOfBucket, share, type Maybe, type Shared } from './plainShares.ts';
import { isEmptyWord, substances, takeOut, takeUnstirred, verbOf, type Verb } from './plainVerbs.ts';
import {
  escaped,
  takeAfterStir,
  takeCup,
  takeLevel,
  takeLook,
  takeSights,
  takeStandardCup,
  takeStrangeCup,
  takeWhen,
} from './plainSights.ts';
import { inFigures, PlainText, plainLine } from './takePlain.ts';
import { unitsNamed } from '../tradeUnits.ts';

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
      maybe?: Maybe;
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

/** Words that are left between what was read, without those that carry nothing at their ends. */
const unreadOf = (text: PlainText): string[] =>
  text.runs().flatMap((run) => {
    const words = run.split(' ');
    while (words.length > 0 && isEmptyWord(words[0] ?? '')) words.shift();
    while (words.length > 0 && isEmptyWord(words.at(-1) ?? '')) words.pop();
    return words.length === 0 ? [] : [words.join(' ')];
  });

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
  // What was poured in counts by its amount, not by how full the pail was afterwards.
  const level = text.words().some(({ word }) => verbOf(word) === 'add') ? undefined : takeLevel(text);
  const all = takeQuantities(text, units);
  const unstirred = takeUnstirred(text);
  const out = takeOut(text, line);
  const substance = substances.find(([words]) => words.test(text.left));
  const verbs = takeVerbs(text);
  const [look, seen] = [takeLook(text), takeSights(text)];
  const lone = named ? undefined : numberOfBucket(all, buckets);
  const bucket = named ?? lone?.bucket ?? takeNearBucket(text, buckets);
  const quantities = all.filter((one) => one !== lone?.at);

  const told = [quantities.length > 0, verbs.size > 0, out, after, look, seen, level, substance, when];
  const isBare = told.every((one) => !one);
  if (bucket && isBare && unreadOf(text).length === 0) return { kind: 'bucket', bucket };
  if (isQuestion) return { kind: 'none' };
  const isPoured = source !== undefined && isFrom(source) && (verbs.has('add') || out);
  if (named && source && !isPoured) return { kind: 'several', buckets: [named, source] };

  const draft = (
    command: PlainCommand,
    { typed, loose }: Shared,
    more: { [option: string]: string | undefined } = {},
    maybe?: Maybe,
  ): PlainLine => {
    const numbers = loose.map((one) => one.typed).filter((one) => one !== maybe?.typed);
    // The words for a bucket that was guessed may have meant what went in.
    const meant = bucket?.guessed && hazardsInName(bucket.typed).length > 0 ? [bucket.typed] : [];
    const unread = [...numbers, ...meant, ...unreadOf(text)];
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
  if (verbs.has('sieve') && !isMeasured) {
    const bare = quantities.map((one) =>
      one.is.includes('mesh') ? { ...one, typed: String(one.number) } : one,
    );
    return draft('sieved', share(bare, [['mesh', 'mesh']]));
  }
  const maybe = maybeOf(shared, vessels.length > 0);
  const isLook = (look ?? seen) !== undefined && (verbs.size > 0 || bucket !== undefined);
  const isBareNumber =
    maybe !== undefined && (verbs.has('read') || (bucket !== undefined && unreadOf(text).length === 0));
  if (isMeasured || isLook || isBareNumber || level !== undefined) {
    const isStirred = after ? after.just : verbs.has('stir');
    const stirred = unstirred ? 'no' : isStirred ? 'yes' : undefined;
    return draft('reading', shared, { look, seen, level, stirred }, maybe);
  }
  if (!verbs.has('stir') || unstirred) return { kind: 'none' };
  const minutes = share(quantities, [['minutes', 'duration']]);
  const tool = text.take(/\b(?:with )?(?:a |the |by )?(drill|mixer|whisk|hand|paddle|stick|machine)\b/i)?.[1];
  return draft('stirred', minutes, { with: tool?.toLowerCase() });
};
