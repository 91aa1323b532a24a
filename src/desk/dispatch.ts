import { instant, type Instant, type Seq } from '../studio/ids.ts';
import type { BucketState } from '../studio/bucket/bucketState.ts';
import type { Handbook } from '../studio/handbook.ts';
import type { LogbookStore, Logbook } from '../studio/logbook/ports.ts';
import type { Words } from '../words/words.ts';
import { typedOptions } from '../contract/contract.ts';
import type { Action, Asking, Choice, Command, Desk, Leaf, Reply, Request } from '../contract/contract.ts';
import { dated } from '../contract/dated.ts';
import { movedOn } from '../replies/bucket/movedOn.ts';
import { leafAt, printLine, quoted } from '../contract/parseLine.ts';

export interface DeskPorts {
  commands: Command[];
  books: LogbookStore;
  words: Words;
  handbook: Handbook;
  /** Takes a bug, answers the id under which it was written down. */
  report(error: unknown, request: Request): string;
}

type Taken = { ok: true; values: Record<string, unknown> } | { ok: false; reply: Reply };

const refusal = (title: Reply['title'], data: Reply['data']): Reply => ({
  kind: 'refusal',
  title,
  private: true,
  data,
});

/** The options that stand beside this one in a line, as they are typed. */
const others = (leaf: Leaf, but: string): string[] =>
  (leaf.form ?? typedOptions(leaf))
    .filter((name) => name !== but)
    .slice(0, 4)
    .map((name) => `${name}:${quoted(leaf.options[name]?.kind.example ?? '')}`);

/** Reads every option; the first that is wrong is the answer. */
const take = async (leaf: Leaf, request: Request, asking: Asking): Promise<Taken> => {
  const { words } = asking;
  const values: Record<string, unknown> = {};
  for (const name of Object.keys(request.typed))
    if (!(name in leaf.options))
      return {
        ok: false,
        reply: refusal(words.desk.unknownOption(name, typedOptions(leaf)), { option: name }),
      };
  for (const [name, option] of Object.entries(leaf.options)) {
    const typed = request.typed[name];
    if (typed === undefined || typed.trim() === '') {
      if (!option.needed) continue;
      return {
        ok: false,
        reply: refusal(words.desk.missing(name, option.about(words), option.kind.example), { option: name }),
      };
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
      // An option that there is none of, after a value; a list may have its own colons.
      const stray = /[,;\n]/.test(typed) ? undefined : /\s([a-z][a-z0-9-]{2,}):/i.exec(typed)?.[1];
      if (stray !== undefined)
        return {
          ok: false,
          reply: refusal(words.desk.line.noOption([...request.path], stray, typedOptions(leaf)), {
            option: stray,
          }),
        };
      if (read.more) {
        const { known, rest } = read.more;
        return {
          ok: false,
          reply: refusal(words.desk.restNeedsOptions(known, rest, others(leaf, name)), { option: name }),
        };
      }
      if (!read.choices)
        return {
          ok: false,
          reply: {
            ...refusal(words.desk.wrong(name, read.why), { option: name, typed: typed.slice(0, 200) }),
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

/** Nothing has happened after now, whatever a phone's clock says. */
const happenedAt = ({ now, happenedAt: said = now }: Request): Instant => instant(Math.min(said, now));

const isBucket = (value: unknown): value is BucketState =>
  typeof value === 'object' && value !== null && 'settings' in value && 'no' in value;

/** An action worked out before somebody else acted is not carried out. */
const overtaken = async (request: Request, after: Seq, values: Record<string, unknown>, asking: Asking) => {
  const bucket = values['bucket'];
  if (!isBucket(bucket) || bucket.seq === after) return undefined;
  if (after > bucket.seq)
    return refusal(asking.words.desk.neverLogged(bucket.settings.name, after, bucket.seq), {
      option: 'after',
    });
  return movedOn(bucket, after, printLine(request.path, request.typed), asking);
};

const answered = async <B extends Logbook>(
  leaf: Leaf & { run(values: never, context: Asking & { book: B }): Promise<Reply> },
  request: Request,
  context: Asking & { book: B },
): Promise<Reply> => {
  const taken = await take(leaf, request, context);
  if (!taken.ok) return taken.reply;
  const moved =
    request.after === undefined ? undefined : await overtaken(request, request.after, taken.values, context);
  // The options' kinds made these values; that they are the ones that this leaf takes is what `asks` and `logs` check.
  return moved ?? leaf.run(taken.values as never, context);
};

const run = async <B extends Logbook>(
  leaf: Leaf & { run(values: never, context: Asking & { book: B }): Promise<Reply> },
  sent: Request,
  asking: Asking & { book: B },
): Promise<Reply> => {
  // Linked or forgotten since the platform looked them up.
  const member = await asking.book.standsFor(asking.member);
  if (member === undefined) return refusal(asking.words.desk.forgotten, {});
  const request = await dated(leaf, sent, { ...asking, member });
  const reply = await answered(leaf, request, { ...asking, member, typed: request.typed });
  const { when } = request.typed;
  return request === sent || reply.kind === 'answer' ? reply : { ...reply, data: { ...reply.data, when } };
};

/** The desk: every platform hands its commands over here, and nobody else opens a transaction. */
export const openDesk = ({ commands, books, words, handbook, report }: DeskPorts): Desk => {
  const answer = async (request: Request): Promise<Reply> => {
    const leaf = leafAt(commands, request.path);
    if (!leaf) return refusal(words.desk.noCommand(request.path.join(' ')), {});
    if (leaf.who === 'keeper' && request.role !== 'keeper')
      return refusal(words.desk.keepersOnly(request.path.join(' ')), {});
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
      ...(guest && { guest }),
    };
    if (leaf.effect === 'asks') {
      const ask = async (book: Logbook): Promise<Reply> => ({
        ...(await run(leaf, request, { ...asking, book })),
        private: true,
      });
      return leaf.aside ? books.readSnapshot(studio, ask) : books.read(studio, ask);
    }
    return books.writeOnce<Reply>(studio, request.key, async (book) => {
      const reply = await run(leaf, request, { ...asking, book });
      const keep = reply.kind === 'answer';
      const value: Reply = keep && !leaf.private ? reply : { ...reply, private: true };
      if (!reply.fleeting) return { keep, value };
      return { keep, value, repeated: { ...refusal(words.desk.shownOnce, {}), kind: 'answer' } };
    });
  };
  return {
    commands,
    async dispatch(request) {
      try {
        return await answer(request);
      } catch (error) {
        const id = report(error, request);
        return { kind: 'error', title: words.desk.broken(id), private: true, data: { id } };
      }
    },
    async suggest(request, name) {
      const leaf = leafAt(commands, request.path);
      const kind = leaf?.options[name]?.kind;
      if (!kind?.suggest || (leaf?.who === 'keeper' && request.role !== 'keeper')) return [];
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
        return kind.suggest?.(request.typed[name] ?? '', asking);
      });
      return (choices ?? []).slice(0, 25);
    },
  };
};
