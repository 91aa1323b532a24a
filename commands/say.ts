import {
  asks,
  needed,
  optional,
  refusal,
  toRun,
  type Action,
  type Asking,
  type Leaf,
  type Reply,
} from '../src/contract/contract.ts';
import { pressToRun } from '../src/contract/replyParts.ts';
import { text } from '../src/contract/kinds/texts.ts';
import { whenPast } from '../src/contract/kinds/when.ts';
import { printLine } from '../src/contract/parseLine.ts';
import { readPlainCoat } from '../src/parse/plain/plainCoat.ts';
import { readPlainLine, type PlainCommand } from '../src/parse/plain/readPlainLine.ts';
import { emergenciesIn, emergencyReply } from '../src/replies/ask/emergencyReply.ts';
import { coatDraft } from '../src/replies/ask/coatDraft.ts';
import {
  edit,
  lineOf,
  mostBuckets,
  offer,
  whatMoved,
  whichBucket,
  withNote,
  type Draft,
  type Typed,
} from '../src/replies/ask/plainDraft.ts';
import { withUnexplained } from '../src/replies/batch/derivedMarks.ts';
import { verdictReply } from '../src/replies/verdict/verdictReply.ts';
import { barehanded } from '../src/studio/settings/barehanded.ts';
import type { Instant } from '../src/studio/ids.ts';
import { isoInstant } from '../src/studio/time/isoInstant.ts';
import { added } from './added.ts';
import { reading } from './reading.ts';
import { sieved } from './sieved.ts';
import { stirred } from './stirred.ts';

const leaves: Record<PlainCommand, Leaf> = { reading, added, stirred, sieved };

/** What the command itself cannot read, and what it would take instead. */
const firstProblem = async ({ command }: Draft, typed: Typed, asking: Asking) => {
  for (const [name, value] of Object.entries(typed)) {
    const read = await leaves[command].options[name]?.kind.read(value, asking);
    if (read?.ok === false) return { name, read };
  }
  return undefined;
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
      actions: [
        ...near.map(({ name: label, value }): Action =>
          toRun([{ said: label }], lineOf(draft, { ...kept, [name]: value }, bucket)),
        ),
        edit(draft, kept, bucket, asking),
      ],
    };
  }
  const moment = told?.ok ? told.value : at;
  const typed = withNote(draft, { ...rest, when: isoInstant(moment) });
  if (!bucket) return whichBucket(draft, typed, draft.bucket?.buckets ?? [], asking);
  if (typed['look'] !== undefined && !barehanded(bucket.settings)) {
    const { look: _look, ...others } = typed;
    return {
      ...refusal(words.reading.noFinger, { option: 'look' }),
      actions: [edit(draft, others, bucket, asking)],
    };
  }
  if (draft.command === 'added' && typed['what'] === undefined)
    return whatMoved(draft, typed, bucket, added.options['what']?.kind.control, asking);
  return offer(draft, typed, bucket, moment, asking);
};

export const say = asks({
  name: 'say',
  about: (w) => w.plain.about,
  who: 'member',
  options: {
    words: needed(text(10_000, 'gull grey 1.46 13 sec stirred'), (w) => w.plain.words),
    when: optional(whenPast, (w) => w.when),
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
    const coat = read.kind === 'none' ? readPlainCoat(v.words) : undefined;
    if (coat) return coatDraft(coat, v.when ?? asking.happenedAt, asking);
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
        if (others.length === 0) return withUnexplained(await verdictReply(only, asking), only, asking);
        return {
          kind: 'choice',
          title: words.option.whichBucket(read.bucket.typed),
          private: true,
          actions: [only, ...others]
            .slice(0, mostBuckets)
            .map(({ no, settings }) =>
              pressToRun([{ said: settings.name }], 'water-or-stir', { bucket: String(no) }),
            ),
          data: {},
        };
      }
      case 'draft':
        return drafted(read, v.when ?? asking.happenedAt, asking);
    }
  },
});
