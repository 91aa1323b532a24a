import { present } from '../../present.ts';
import { choice, fact } from '../../contract/replyParts.ts';
import {
  refusal,
  toEdit,
  toRun,
  type Action,
  type Asking,
  type Kind,
  type Reply,
} from '../../contract/contract.ts';
import { printLine } from '../../contract/parseLine.ts';
import type { PlainLine } from '../../parse/plain/readPlainLine.ts';
import type { Text } from '../../words/text/text.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { days, since, type Instant } from '../../studio/ids.ts';

/** What a line in plain words would log. */
export type Draft = Extract<PlainLine, { kind: 'draft' }>;
export type Typed = Record<string, string>;

/** As many as any platform can offer. */
export const mostBuckets = 25;
/** What was said longer ago is not taken for fresh without asking: common practice. */
const fresh = days(1);

/** The draft as a line; its time is when it was said, however late it is pressed. */
export const lineOf = ({ command }: Draft, typed: Typed, bucket?: BucketState): string =>
  printLine([command], { ...(bucket && { bucket: String(bucket.no) }), ...typed }, bucket?.seq);

/** The draft, to be put right in a form. */
export const edit = (
  draft: Draft,
  typed: Typed,
  bucket: BucketState | undefined,
  { words }: Asking,
): Action => toEdit(words.plain.change, lineOf(draft, typed, bucket));

/** The same line for each of several buckets. */
export const whichBucket = async (
  draft: Draft,
  typed: Typed,
  some: readonly BucketState[],
  { book, words }: Asking,
): Promise<Reply> => {
  const all = some.length > 0 ? some : (await book.buckets()).filter(({ retired }) => !retired);
  const offered = all.slice(0, mostBuckets);
  if (offered.length === 0) return refusal(words.option.noBucketYet);
  const missing = draft.bucket ? (some.length === 0 ? draft.bucket.typed : undefined) : draft.unread[0];
  return choice(
    missing === undefined
      ? words.plain.whichBucket(draft.command, typed)
      : words.plain.noBucket(missing, draft.command, typed),
    offered.map((bucket) => {
      const { no, retired, hold, settings } = bucket;
      const label = words.bucket.label(no, settings.name, { retired, held: hold !== undefined });
      return toRun([{ said: label }], lineOf(draft, typed, bucket));
    }),
    {
      option: 'bucket',
      choices: offered.map(({ no, settings }) => ({ label: settings.name, value: String(no) })),
    },
  );
};

/** The draft with its bucket, to be logged by one press. */
export const offer = (
  draft: Draft,
  typed: Typed,
  bucket: BucketState,
  at: Instant,
  asking: Asking,
): Reply => {
  const { words, now } = asking;
  const w = words.plain;
  const { maybe, unread, command } = draft;
  const { name } = bucket.settings;
  const isOld = since(at, now) > fresh;
  const log = (label: Text, options: Typed) => toRun(label, lineOf(draft, options, bucket));
  // A number of which nobody knows what it is, and nothing else.
  const isEmpty = Object.keys(typed).every((option) => option === 'when' || option === 'note');
  const title =
    isEmpty && maybe ? w.noUnit(name, maybe.typed) : (isOld ? w.logOld : w.log)(name, command, typed, at);
  const actions = present([
    maybe
      ? log(w.with(maybe.option, maybe.value), { ...typed, [maybe.option]: maybe.value })
      : log(isOld ? w.logThen : w.logIt, typed),
    maybe && !isEmpty && log(w.without(maybe.typed), typed),
    edit(draft, typed, bucket, asking),
  ]);
  return {
    ...choice(title, actions, { draft: lineOf(draft, typed, bucket), unread }),
    facts: present([
      draft.bucket?.guessed && fact(w.factBucket, w.guessed(draft.bucket.typed, name)),
      unread.length > 0 && fact(w.factUnread, w.unread(unread)),
    ]),
  };
};

/** Asks what went in, or what came out. */
export const whatMoved = (
  draft: Draft,
  typed: Typed,
  bucket: BucketState,
  control: Kind<unknown>['control'] | undefined,
  { words }: Asking,
): Reply => {
  const outwards = (value: string) => value === 'draw-off' || value === 'taken';
  const picks = typeof control === 'object' ? control.pick : [];
  const fitting = picks.filter(({ value }) => outwards(value) === (draft.out ?? false));
  return choice(
    words.plain.whatMoved(bucket.settings.name, typed['amount'] ?? ''),
    fitting.map(({ name, value }) => toRun([name], lineOf(draft, { what: value, ...typed }, bucket))),
    { option: 'what', choices: fitting.map(({ name, value }) => ({ label: name, value })) },
  );
};

/** What was not understood goes in as a note, so that nothing is lost; but not the name of an unknown bucket. */
export const withNote = ({ bucket, unread }: Draft, typed: Typed): Typed => {
  const runs = bucket ? unread : unread.slice(1);
  const note = [typed['note'], ...runs].filter((one) => one !== undefined && one !== '').join('; ');
  return note === '' ? typed : { ...typed, note };
};
