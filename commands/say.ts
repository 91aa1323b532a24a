import { asks, type Action, type Asking, type Leaf, type Reply } from '../src/contract/contract.ts';
import { text } from '../src/contract/kinds/texts.ts';
import { whenPast } from '../src/contract/kinds/when.ts';
import { printLine } from '../src/contract/parseLine.ts';
import { refusal } from '../src/contract/refusal.ts';
import { readPlainLine, type PlainCommand, type PlainLine } from '../src/parse/readPlainLine.ts';
import { emergenciesIn, emergencyReply } from '../src/replies/ask/emergencyReply.ts';
import { unexplainedIn } from '../src/replies/batch/derivedMarks.ts';
import { verdictReply } from '../src/replies/verdict/verdictReply.ts';
import type { BucketState } from '../src/studio/bucket/bucketState.ts';
import { days, since, type Instant } from '../src/studio/ids.ts';
import { isoInstant } from '../src/studio/time/isoInstant.ts';
import { added } from './added.ts';
import { reading } from './reading.ts';
import { sieved } from './sieved.ts';
import { stirred } from './stirred.ts';

type Draft = Extract<PlainLine, { kind: 'draft' }>;
type Typed = Record<string, string>;

const leaves: Record<PlainCommand, Leaf> = { reading, added, stirred, sieved };

/** As many as any platform can offer. */
const mostBuckets = 25;
/** What was said longer ago is not taken for fresh without asking: common practice. */
const fresh = days(1);

/** The draft as a line; its time is when it was said, however late it is pressed. */
const lineOf = ({ command }: Draft, typed: Typed, bucket?: BucketState): string =>
  printLine([command], { ...(bucket && { bucket: String(bucket.no) }), ...typed }, bucket?.seq);

/** What the command itself cannot read, and what it would take instead. */
const firstProblem = async ({ command }: Draft, typed: Typed, asking: Asking) => {
  for (const [name, value] of Object.entries(typed)) {
    const read = await leaves[command].options[name]?.kind.read(value, asking);
    if (read?.ok === false) return { name, read };
  }
  return undefined;
};

const edit = (draft: Draft, typed: Typed, bucket: BucketState | undefined, { words }: Asking): Action => ({
  label: words.plain.change,
  line: lineOf(draft, typed, bucket),
  press: 'edit',
});

/** The same line for each of several buckets. */
const whichBucket = async (
  draft: Draft,
  typed: Typed,
  some: readonly BucketState[],
  { book, words }: Asking,
): Promise<Reply> => {
  const all = some.length > 0 ? some : (await book.buckets()).filter(({ retired }) => !retired);
  const offered = all.slice(0, mostBuckets);
  if (offered.length === 0) return refusal(words.option.noBucketYet);
  const missing = draft.bucket ? (some.length === 0 ? draft.bucket.typed : undefined) : draft.unread[0];
  return {
    kind: 'choice',
    title:
      missing === undefined
        ? words.plain.whichBucket(draft.command, typed)
        : words.plain.noBucket(missing, draft.command, typed),
    private: true,
    actions: offered.map((bucket) => ({
      label: [
        {
          said: words.bucket.label(bucket.no, bucket.settings.name, {
            retired: bucket.retired,
            held: bucket.hold !== undefined,
          }),
        },
      ],
      line: lineOf(draft, typed, bucket),
      press: 'run',
    })),
    data: {
      option: 'bucket',
      choices: offered.map(({ no, settings }) => ({ label: settings.name, value: String(no) })),
    },
  };
};

/** The draft with its bucket, to be logged by one press. */
const offer = (draft: Draft, typed: Typed, bucket: BucketState, at: Instant, asking: Asking): Reply => {
  const { words, now } = asking;
  const w = words.plain;
  const { maybe, unread, command } = draft;
  const { name } = bucket.settings;
  const isOld = since(at, now) > fresh;
  const log = (label: Action['label'], options: Typed): Action => ({
    label,
    line: lineOf(draft, options, bucket),
    press: 'run',
  });
  // A number of which nobody knows what it is, and nothing else.
  const isEmpty = Object.keys(typed).every((option) => option === 'when' || option === 'note');
  const logIt = isOld ? w.logThen : w.logIt;
  return {
    kind: 'choice',
    title:
      isEmpty && maybe ? w.noUnit(name, maybe.typed) : (isOld ? w.logOld : w.log)(name, command, typed, at),
    private: true,
    facts: [
      ...(draft.bucket?.guessed
        ? [{ label: [w.factBucket], text: w.guessed(draft.bucket.typed, name) }]
        : []),
      ...(unread.length > 0 ? [{ label: [w.factUnread], text: w.unread(unread) }] : []),
    ],
    actions: [
      ...(maybe
        ? [log(w.with(maybe.option, maybe.value), { ...typed, [maybe.option]: maybe.value })]
        : [log(logIt, typed)]),
      ...(maybe && !isEmpty ? [log(w.without(maybe.typed), typed)] : []),
      edit(draft, typed, bucket, asking),
    ],
    data: { draft: lineOf(draft, typed, bucket), unread },
  };
};

const whatMoved = (draft: Draft, typed: Typed, bucket: BucketState, { words }: Asking): Reply => {
  const { kind } = added.options['what'] ?? {};
  const outwards = (value: string) => value === 'draw-off' || value === 'taken';
  const picks = typeof kind?.control === 'object' ? kind.control.pick : [];
  const fitting = picks.filter(({ value }) => outwards(value) === (draft.out ?? false));
  return {
    kind: 'choice',
    title: words.plain.whatMoved(bucket.settings.name, typed['amount'] ?? ''),
    private: true,
    actions: fitting.map(({ name, value }) => ({
      label: [name],
      line: lineOf(draft, { what: value, ...typed }, bucket),
      press: 'run',
    })),
    data: { option: 'what', choices: fitting.map(({ name, value }) => ({ label: name, value })) },
  };
};

/** What was not understood goes in as a note, so that nothing is lost; but not the name of an unknown bucket. */
const withNote = ({ bucket, unread }: Draft, typed: Typed): Typed => {
  const runs = bucket ? unread : unread.slice(1);
  const note = [typed['note'], ...runs].filter((one) => one !== undefined && one !== '').join('; ');
  return note === '' ? typed : { ...typed, note };
};

const drafted = async (draft: Draft, at: Instant, asking: Asking): Promise<Reply> => {
  const { words } = asking;
  const then = { ...asking, happenedAt: at };
  const { when: phrase, ...rest } = draft.typed;
  const told = phrase === undefined ? undefined : await whenPast.read(phrase, then);
  const problem = told?.ok === false ? { name: 'when', read: told } : await firstProblem(draft, rest, then);
  const [only, ...others] = draft.bucket?.buckets ?? [];
  const bucket = others.length === 0 ? only : undefined;
  if (problem) {
    const { name, read } = problem;
    const moment = isoInstant(told?.ok ? told.value : at);
    const kept = { ...rest, when: moment };
    const near = bucket ? [...(read.choices ?? []), ...(read.near ?? [])] : [];
    return {
      ...refusal(words.desk.wrong(name, read.why), { option: name }),
      private: true,
      actions: [
        ...near.map(({ name: label, value }): Action => ({
          label: [{ said: label }],
          line: lineOf(draft, { ...kept, [name]: value }, bucket),
          press: 'run',
        })),
        edit(draft, kept, bucket, asking),
      ],
    };
  }
  const moment = told?.ok ? told.value : at;
  const typed = withNote(draft, { ...rest, when: isoInstant(moment) });
  if (!bucket) return whichBucket(draft, typed, draft.bucket?.buckets ?? [], asking);
  if (draft.command === 'added' && typed['what'] === undefined)
    return whatMoved(draft, typed, bucket, asking);
  return offer(draft, typed, bucket, moment, asking);
};

export const say = asks({
  name: 'say',
  about: (w) => w.plain.about,
  who: 'member',
  options: {
    words: { kind: text(10_000, 'gull grey 1.46 13 sec stirred'), needed: true, about: (w) => w.plain.words },
    when: { kind: whenPast, needed: false, about: (w) => w.when },
  },
  async run(v, asking) {
    const { words, book } = asking;
    const urgent = await emergenciesIn(v.words, asking);
    const now = urgent.length > 0 && (await emergencyReply(urgent, v.words.slice(0, 600), undefined, asking));
    if (now) return now;
    const { units, vessels, cups } = await book.studio();
    const buckets = await book.buckets();
    const names = (some: readonly { name: string }[]) => some.map(({ name }) => name);
    const read = readPlainLine(v.words, { buckets, units, vessels: names(vessels), cups: names(cups) });
    switch (read.kind) {
      case 'none':
      case 'too-long': {
        const title = read.kind === 'none' ? words.plain.none : words.plain.tooLong(read.most);
        const question = {
          label: words.plain.ask,
          line: printLine(['ask'], { question: v.words.slice(0, 500) }),
        };
        return {
          ...refusal(title, { plain: read.kind }),
          ...(read.kind === 'none' && { actions: [{ ...question, press: 'run' }] }),
        };
      }
      case 'several':
        return refusal(
          words.plain.several(read.buckets.map((one) => one.buckets[0]?.settings.name ?? one.typed)),
        );
      case 'bucket': {
        const [only, ...others] = read.bucket.buckets;
        if (!only) return refusal(words.option.noBucket(read.bucket.typed, undefined));
        if (others.length === 0) {
          const reply = await verdictReply(only, asking);
          const unexplained = await unexplainedIn(only.settings, asking);
          return { ...reply, cautions: [...unexplained, ...(reply.cautions ?? [])] };
        }
        return {
          kind: 'choice',
          title: words.option.whichBucket(read.bucket.typed),
          private: true,
          actions: [only, ...others].slice(0, mostBuckets).map(({ no, settings }) => ({
            label: [{ said: settings.name }],
            line: printLine(['water-or-stir'], { bucket: String(no) }),
            press: 'run',
          })),
          data: {},
        };
      }
      case 'draft':
        return drafted(read, v.when ?? asking.happenedAt, asking);
    }
  },
});
