import { definedOnly } from '../definedOnly.ts';
import { instant, type Instant } from '../studio/ids.ts';
import type { Handbook } from '../studio/handbook.ts';
import type { LogbookStore, Logbook } from '../studio/logbook/ports.ts';
import type { Words } from '../words/words.ts';
import {
  refusal,
  type Afterwards,
  type AnswerAndAfterwards,
  type Command,
  type Reply,
} from '../contract/contract.ts';
import type { Desk, Request } from '../contract/desk.ts';
import type { LabelPort } from '../contract/labelSheet.ts';
import { leafAt } from '../contract/parseLine.ts';
import { troubleOf } from '../contract/trouble.ts';
import { withAllowedActions } from './allowedActions.ts';
import { isTooLong, mostChoices, shortChoice } from './readOptions.ts';
import { runFor } from './runLeaf.ts';

export interface DeskPorts {
  commands: Command[];
  books: LogbookStore;
  words: Words;
  handbook: Handbook;
  labels?: LabelPort;
  /**
   * How many entries a member can log in a day (of UTC), far more than anybody does at the buckets: no one of them can
   * fill the disk that the others log on.
   */
  mostADay?: number;
  /** Logs a bug, and returns the id under which it was logged. */
  report(error: unknown, request: Request): string;
}

/** Clamped to now: a phone's clock may be fast. */
const happenedAt = ({ now, happenedAt: said = now }: Request): Instant => instant(Math.min(said, now));

/** The desk runs every platform's commands, and alone opens transactions. */
export const openDesk = ({
  commands,
  books,
  words,
  handbook,
  labels,
  report,
  mostADay = 2_000,
}: DeskPorts): Desk => {
  const writeAfterwards = async (request: Request, write: Afterwards): Promise<void> => {
    const { studio, member, now, key } = request;
    try {
      await books.writeOnce(studio, `after:${key}`, async (book) => {
        if ((await book.countToday(member, now)) > mostADay) return { keep: false, value: null };
        await write(book);
        return { keep: true, value: null };
      });
    } catch (error) {
      report(error, request);
    }
  };
  const asked = (request: Request) => {
    const { studio, member, role, now, typed } = request;
    return { studio, member, role, now, happenedAt: happenedAt(request), words, handbook, typed };
  };
  const answer = async (request: Request): Promise<Reply> => {
    const leaf = leafAt(commands, request.path);
    if (!leaf) return refusal(words.desk.noCommand(request.path.join(' ')));
    if (leaf.who === 'keeper' && request.role !== 'keeper')
      return refusal(words.desk.keepersOnly(request.path.join(' ')));
    const { studio, member, now, guest } = request;
    const asking = { ...asked(request), ...definedOnly({ guest, labels }) };
    if (leaf.effect === 'asks') {
      const ask = (book: Logbook): Promise<AnswerAndAfterwards> => runFor(leaf, request, { ...asking, book });
      const { afterwards, ...reply } = await (leaf.aside
        ? books.readSnapshot(studio, ask)
        : books.read(studio, ask));
      if (afterwards && !request.probe) await writeAfterwards(request, afterwards);
      return { ...reply, private: true };
    }
    return books.writeOnce<Reply>(studio, request.key, async (book) => {
      // Asked at the same time: a server far away answers both at once.
      const standsFor = book.standsFor(member);
      const [today] = await Promise.all([book.countToday(member, now), standsFor]);
      // What is refused is not kept, and so not counted either.
      if (today > mostADay) return { keep: false, value: refusal(words.desk.enoughToday(mostADay)) };
      const reply = await runFor(leaf, request, { ...asking, book }, standsFor);
      const keep = reply.kind === 'answer';
      const value: Reply = keep && !leaf.private ? reply : { ...reply, private: true };
      if (!reply.fleeting) return { keep, value };
      return { keep, value, repeated: { ...refusal(words.desk.shownOnce), kind: 'answer' } };
    });
  };
  return {
    commands,
    async dispatch(request) {
      try {
        return withAllowedActions(await answer(request), request.role, commands);
      } catch (error) {
        const id = report(error, request);
        const why = troubleOf(error);
        return why
          ? { kind: 'error', title: words.desk.trouble[why], private: true, data: { why } }
          : { kind: 'error', title: words.desk.broken(id), private: true, data: { id } };
      }
    },
    async suggest(request, name) {
      const leaf = leafAt(commands, request.path);
      const kind = leaf?.options[name]?.kind;
      if (!kind?.suggest || (leaf?.who === 'keeper' && request.role !== 'keeper')) return [];
      const typed = request.typed[name] ?? '';
      if (isTooLong(typed, kind)) return [];
      const choices = await books.read(request.studio, async (book) => {
        const member = await book.standsFor(request.member);
        return member === undefined ? [] : kind.suggest?.(typed, { ...asked(request), member, book });
      });
      return (choices ?? []).slice(0, mostChoices).map(shortChoice);
    },
  };
};
