import { definedOnly } from '../definedOnly.ts';
import { instant, type Instant, type Seq } from '../studio/ids.ts';
import type { BucketState } from '../studio/bucket/bucketState.ts';
import type { Handbook } from '../studio/handbook.ts';
import type { LogbookStore, Logbook } from '../studio/logbook/ports.ts';
import type { Words } from '../words/words.ts';
import {
  type Action,
  type Afterwards,
  type AnswerAndAfterwards,
  type Asking,
  type Choice,
  type Command,
  type Desk,
  type Fact,
  type Kind,
  type Leaf,
  type Reply,
  type Request,
  typedOptions,
} from '../contract/contract.ts';
import type { LabelPort } from '../contract/labelSheet.ts';
import { withOriginalTime, whenOption } from '../contract/withOriginalTime.ts';
import { DailyLimit } from './dailyLimit.ts';
import { movedOn } from '../replies/bucket/movedOn.ts';
import { onceEach } from '../replies/verdict/onceEach.ts';
import { leafAt, parseLine, printLine, quoted } from '../contract/parseLine.ts';
import { refusal } from '../contract/refusal.ts';
import { troubleOf } from '../contract/trouble.ts';

export interface DeskPorts {
  commands: Command[];
  books: LogbookStore;
  words: Words;
  handbook: Handbook;
  labels?: LabelPort;
  /** How many entries a member can log in a day, when not the usual. */
  mostADay?: number;
  /** Logs a bug, and returns the id under which it was logged. */
  report(error: unknown, request: Request): string;
}

type ReadOptions = { ok: true; values: Record<string, unknown> } | { ok: false; reply: Reply };

const refuse = (title: Reply['title'], data: Reply['data']): Reply => ({
  ...refusal(title, data),
  private: true,
});

/** Longer than any name, number or time. Parsing more would keep other members waiting. */
const usuallyLongest = 200;
const longestOf = ({ longest = usuallyLongest }: Kind<unknown>): number => longest;
const isTooLong = (typed: string, kind: Kind<unknown>): boolean => typed.length > longestOf(kind);

/** The other options of the leaf, as they are typed in a line. */
const otherOptions = (leaf: Leaf, but: string): string[] =>
  (leaf.form ?? typedOptions(leaf))
    .filter((name) => name !== but)
    .slice(0, 4)
    .map((name) => `${name}:${quoted(leaf.options[name]?.kind.example ?? '')}`);

/** Parses every option, and stops at the first that is wrong. */
const readOptions = async (leaf: Leaf, request: Request, asking: Asking): Promise<ReadOptions> => {
  const { words } = asking;
  const values: Record<string, unknown> = {};
  for (const name of Object.keys(request.typed))
    if (!(name in leaf.options))
      return {
        ok: false,
        reply: refuse(words.desk.unknownOption(name, typedOptions(leaf)), { option: name }),
      };
  for (const [name, option] of Object.entries(leaf.options)) {
    const typed = request.typed[name];
    if (typed === undefined || typed.trim() === '') {
      if (!option.needed) continue;
      return {
        ok: false,
        reply: refuse(words.desk.missing(name, option.about(words), option.kind.example), { option: name }),
      };
    }
    if (isTooLong(typed, option.kind)) {
      const why = words.option.tooLong(longestOf(option.kind), typed.length);
      return { ok: false, reply: refuse(words.desk.wrong(name, why), { option: name }) };
    }
    const read = await option.kind.read(typed, asking);
    if (read.ok) values[name] = read.value;
    else {
      const instead = (choices: readonly Choice[]): Action[] =>
        choices.map(({ name: label, value }) => ({
          label: [{ said: label }],
          line: printLine(request.path, { ...request.typed, [name]: value }, request.after),
          press: 'run',
        }));
      // Unknown `option:` after the value. Lists are exempt: their items may contain colons.
      const stray = /[,;\n]/.test(typed) ? undefined : /\s([a-z][a-z0-9-]{2,}):/i.exec(typed)?.[1];
      if (stray !== undefined)
        return {
          ok: false,
          reply: refuse(words.desk.line.noOption([...request.path], stray, typedOptions(leaf)), {
            option: stray,
          }),
        };
      if (read.more) {
        const { known, rest } = read.more;
        return {
          ok: false,
          reply: refuse(words.desk.restNeedsOptions(known, rest, otherOptions(leaf, name)), {
            option: name,
          }),
        };
      }
      if (!read.choices)
        return {
          ok: false,
          reply: {
            ...refuse(words.desk.wrong(name, read.why), { option: name, typed: typed.slice(0, 200) }),
            ...(read.near && { actions: instead(read.near) }),
          },
        };
      return {
        ok: false,
        reply: {
          kind: 'choice',
          title: read.why,
          private: true,
          actions: instead(read.choices),
          data: { option: name, choices: read.choices.map(({ name: label, value }) => ({ label, value })) },
        },
      };
    }
  }
  return { ok: true, values };
};

/** Clamped to now: a phone's clock may be fast. */
const happenedAt = ({ now, happenedAt: said = now }: Request): Instant => instant(Math.min(said, now));

const isBucket = (value: unknown): value is BucketState =>
  typeof value === 'object' && value !== null && 'settings' in value && 'no' in value;

const withAllowedPresses = (fact: Fact, may: (action: Action) => boolean): Fact =>
  fact.presses ? { ...fact, presses: fact.presses.filter(may) } : fact;

/** Drops the actions that the member's role does not allow. */
const withAllowedActions = (reply: Reply, role: Request['role'], commands: Command[]): Reply => {
  const { actions, cautions, facts } = reply;
  const may = ({ line }: Action): boolean => {
    const parsed = parseLine(line, commands);
    return !parsed.ok || leafAt(commands, parsed.value.path)?.who !== 'keeper';
  };
  return {
    ...reply,
    ...(actions && role !== 'keeper' && { actions: actions.filter(may) }),
    ...(facts && role !== 'keeper' && { facts: facts.map((fact) => withAllowedPresses(fact, may)) }),
    ...(cautions && { cautions: onceEach(cautions) }),
  };
};

/** Whether somebody changed the bucket after the action was offered. Then the action is not run. */
const isOvertaken = async (request: Request, after: Seq, values: Record<string, unknown>, asking: Asking) => {
  const bucket = values['bucket'];
  if (!isBucket(bucket) || bucket.seq === after) return undefined;
  if (after > bucket.seq)
    return refuse(asking.words.desk.neverLogged(bucket.settings.name, after, bucket.seq), {
      option: 'after',
    });
  return movedOn(bucket, after, printLine(request.path, request.typed), asking);
};

/** Reads a command's options and runs it in the logbook that it is given. */
export const runLeaf = async <B extends Logbook>(
  leaf: Leaf & { run(values: never, context: Asking & { book: B }): Promise<AnswerAndAfterwards> },
  request: Request,
  context: Asking & { book: B },
): Promise<AnswerAndAfterwards> => {
  const taken = await readOptions(leaf, request, context);
  if (!taken.ok) return taken.reply;
  const moved =
    request.after === undefined
      ? undefined
      : await isOvertaken(request, request.after, taken.values, context);
  // The kinds parsed these values, and `asks` and `logs` check that they match this leaf's options.
  return moved ?? leaf.run(taken.values as never, context);
};

const run = async <B extends Logbook>(
  leaf: Leaf & { run(values: never, context: Asking & { book: B }): Promise<AnswerAndAfterwards> },
  sent: Request,
  asking: Asking & { book: B },
): Promise<AnswerAndAfterwards> => {
  // The member may have been linked or forgotten since the platform looked them up.
  const member = await asking.book.standsFor(asking.member);
  if (member === undefined) return refuse(asking.words.desk.forgotten, {});
  const request = await withOriginalTime(leaf, sent, { ...asking, member });
  const reply = await runLeaf(leaf, request, { ...asking, member, typed: request.typed });
  const name = whenOption(leaf);
  return request === sent || reply.kind === 'answer' || name === undefined
    ? reply
    : { ...reply, data: { ...reply.data, [name]: request.typed[name] } };
};

/** The desk runs every platform's commands, and alone opens transactions. */
export const openDesk = ({ commands, books, words, handbook, labels, report, mostADay }: DeskPorts): Desk => {
  const daily = new DailyLimit(mostADay);
  const writeAfterwards = async (request: Request, write: Afterwards): Promise<void> => {
    const { studio, member, now, key } = request;
    if (daily.isReached(member, now)) return;
    try {
      await books.writeOnce(studio, `after:${key}`, async (book) => {
        await write(book);
        return { keep: true, value: null };
      });
      daily.count(member);
    } catch (error) {
      report(error, request);
    }
  };
  const answer = async (request: Request): Promise<Reply> => {
    const leaf = leafAt(commands, request.path);
    if (!leaf) return refuse(words.desk.noCommand(request.path.join(' ')), {});
    if (leaf.who === 'keeper' && request.role !== 'keeper')
      return refuse(words.desk.keepersOnly(request.path.join(' ')), {});
    const { studio, member, role, now, guest } = request;
    const asking = {
      studio,
      member,
      role,
      now,
      happenedAt: happenedAt(request),
      words,
      handbook,
      typed: request.typed,
      ...definedOnly({ guest, labels }),
    };
    if (leaf.effect === 'asks') {
      const ask = (book: Logbook): Promise<AnswerAndAfterwards> => run(leaf, request, { ...asking, book });
      const { afterwards, ...reply } = await (leaf.aside
        ? books.readSnapshot(studio, ask)
        : books.read(studio, ask));
      if (afterwards && !request.probe) await writeAfterwards(request, afterwards);
      return { ...reply, private: true };
    }
    return books.writeOnce<Reply>(studio, request.key, async (book) => {
      if (daily.isReached(member, now))
        return { keep: false, value: refuse(words.desk.enoughToday(daily.most), {}) };
      const reply = await run(leaf, request, { ...asking, book });
      const keep = reply.kind === 'answer';
      if (keep) daily.count(member);
      const value: Reply = keep && !leaf.private ? reply : { ...reply, private: true };
      if (!reply.fleeting) return { keep, value };
      return { keep, value, repeated: { ...refuse(words.desk.shownOnce, {}), kind: 'answer' } };
    });
  };
  return {
    commands,
    async dispatch(request) {
      try {
        return withAllowedActions(await answer(request), request.role, commands);
      } catch (error) {
        const id = report(error, request);
        const trouble = troubleOf(error);
        if (trouble)
          return { kind: 'error', title: words.desk.trouble[trouble], private: true, data: { why: trouble } };
        return { kind: 'error', title: words.desk.broken(id), private: true, data: { id } };
      }
    },
    async suggest(request, name) {
      const leaf = leafAt(commands, request.path);
      const kind = leaf?.options[name]?.kind;
      if (!kind?.suggest || (leaf?.who === 'keeper' && request.role !== 'keeper')) return [];
      const typed = request.typed[name] ?? '';
      if (isTooLong(typed, kind)) return [];
      const { studio, role, now } = request;
      const choices = await books.read(studio, async (book) => {
        const member = await book.standsFor(request.member);
        if (member === undefined) return [];
        const asking = {
          studio,
          member,
          role,
          now,
          happenedAt: happenedAt(request),
          words,
          handbook,
          book,
          typed: request.typed,
        };
        return kind.suggest?.(typed, asking);
      });
      return (choices ?? []).slice(0, 25);
    },
  };
};
