import type { Kysely } from 'kysely';
import { seq, studioStream, type Seq, type StreamNo, type StudioId } from '../../studio/ids.ts';
import { eventWithoutWords, labelOf } from '../../studio/logbook/eventWithoutWords.ts';
import { erasedMark, nameAsWord, withoutWords } from '../../studio/people/withoutWords.ts';
import type { Erasure } from './erasureRow.ts';
import { readEvent } from '../entries/eventRow.ts';
import { lastSeq } from '../entries/lastSeq.ts';
import { rewriteEvents } from './rewriteEvents.ts';
import { noteChange } from './noteChange.ts';
import type { Tables } from '../migrations/tables.ts';
import { inBatches } from './inBatches.ts';
import { writeAll, type Turns } from '../engine/turns.ts';

/** A small batch, so that nobody has to wait for it. */
const rowsAtOnce = 2_000;
const fewAnswers = 200;

const streamsOf = (turns: Turns, studio: StudioId): Promise<{ stream_no: StreamNo; seq: Seq }[]> =>
  turns.read({ rows: studio }, ({ db }) =>
    db
      .selectFrom('streams')
      .where('studio_id', '=', studio)
      .select(['stream_no', (streams) => lastSeq(streams).as('seq')])
      .execute(),
  );

const theirEntries = (db: Kysely<Tables>, { studio, members }: Erasure, stream: StreamNo, from: number) =>
  db
    .selectFrom('events as entry')
    .where('entry.studio_id', '=', studio)
    .where('entry.stream_no', '=', stream)
    .where('entry.seq', '>', seq(from))
    .where('entry.seq', '<=', seq(from + rowsAtOnce))
    .where('entry.member_id', 'in', [...members]);

/** A member's notes and the names of their pots, which stored answers may repeat. */
export const gatherTexts = async (turns: Turns, erasure: Erasure): Promise<string[]> => {
  const texts = new Set<string>();
  for (const { stream_no: stream, seq: last } of await streamsOf(turns, erasure.studio))
    for (let from = 0; from < last; from += rowsAtOnce)
      await turns.read({ rows: erasure.studio }, async ({ db }) => {
        const rows = await theirEntries(db, erasure, stream, from)
          .leftJoin('notes', (join) =>
            join
              .onRef('notes.studio_id', '=', 'entry.studio_id')
              .onRef('notes.stream_no', '=', 'entry.stream_no')
              .onRef('notes.seq', '=', 'entry.seq'),
          )
          .select(['entry.event', 'notes.note'])
          .execute();
        for (const { event, note } of rows) {
          const label = stream < studioStream ? labelOf(readEvent(stream, event)) : undefined;
          for (const text of [note, label]) if (text) texts.add(text);
        }
      });
  texts.delete(erasedMark);
  return [...texts];
};

/** Erases a member's notes, and the words in their entries. */
export const eraseEntries = async (turns: Turns, erasure: Erasure): Promise<void> => {
  const { studio, names } = erasure;
  const name = nameAsWord(names);
  for (const { stream_no: stream, seq: last } of await streamsOf(turns, studio))
    for (let from = 0; from < last; from += rowsAtOnce)
      await turns.write({ logbook: studio }, async (writing) => {
        const { db } = writing;
        const rows = await theirEntries(db, erasure, stream, from)
          .select(['entry.seq', 'entry.event'])
          .execute();
        if (rows.length === 0) return { keep: false, value: undefined };
        await db
          .deleteFrom('notes')
          .where(({ and }) => and({ studio_id: studio, stream_no: stream }))
          .where('seq', 'in', theirEntries(db, erasure, stream, from).select('entry.seq'))
          .execute();
        await rewriteEvents(writing, { studio, stream, rows }, (event) => eventWithoutWords(event, name));
        return { keep: true, value: undefined };
      });
};

/** Erases the words from the answers that are kept for repeats. */
export const eraseReplies = (turns: Turns, erasure: Erasure): Promise<void> => {
  const clean = withoutWords(erasure);
  return inBatches(turns, { rows: erasure.studio }, '', async ({ db }, after) => {
    const replies = await db
      .selectFrom('replies')
      .where('studio_id', '=', erasure.studio)
      .where('key', '>', after)
      .select(['key', 'value'])
      .orderBy('key')
      .limit(fewAnswers)
      .execute();
    for (const { key, value } of replies) {
      const fresh = JSON.stringify(clean(JSON.parse(value)));
      if (fresh !== value)
        await db
          .updateTable('replies')
          .set({ value: fresh })
          .where(({ and }) => and({ studio_id: erasure.studio, key }))
          .execute();
    }
    return replies.at(-1)?.key;
  });
};

const nothing = JSON.stringify({ kind: 'answer', title: [erasedMark], private: true, data: {} });

/** Empties a member's posts in the room, and erases their words from other posts. */
export const erasePosts = (turns: Turns, erasure: Erasure): Promise<void> => {
  const { studio, members } = erasure;
  const clean = withoutWords(erasure);
  return inBatches(turns, { rows: studio }, -1, async ({ db }, after) => {
    const posts = await db
      .selectFrom('room_posts')
      .where('studio_id', '=', studio)
      .where('no', '>', after)
      .select(['no', 'member_id', 'line', 'reply'])
      .orderBy('no')
      .limit(fewAnswers)
      .execute();
    for (const { no, member_id, line, reply } of posts) {
      const theirs = members.includes(member_id);
      const fresh = theirs
        ? { line: '', reply: nothing, private: 1 }
        : { line: clean({ typed: line }).typed, reply: JSON.stringify(clean(JSON.parse(reply))) };
      if (theirs || fresh.line !== line || fresh.reply !== reply)
        await db
          .updateTable('room_posts')
          .set(fresh)
          .where(({ and }) => and({ studio_id: studio, no }))
          .execute();
    }
    if (posts.length > 0) await noteChange(db, studio, 'posts_changed');
    return posts.at(-1)?.no;
  });
};

/** Deletes held lines that contain any of the words: their buttons then say that they are too old. */
export const eraseHeldLines = (turns: Turns, { studio, names, texts }: Erasure): Promise<void> =>
  writeAll(turns, { rows: studio }, async ({ db }) => {
    const name = nameAsWord(names);
    const held = await db
      .selectFrom('held_lines')
      .where('studio_id', '=', studio)
      .select(['id', 'line'])
      .execute();
    for (const { id, line } of held) {
      const plain = line.replace(/\\(["\\])/g, '$1');
      if (
        /\bnote:/.test(line) ||
        (name && line.search(name) >= 0) ||
        texts.some((text) => plain.includes(text))
      )
        await db.deleteFrom('held_lines').where('id', '=', id).execute();
    }
  });

/** A shorter text within a question, such as the name of a pot, could be anybody's. */
const tellingLength = 12;

/** Deletes the open questions that contain any of the words. Who asked the others is not stored. */
export const eraseOpenQuestions = (turns: Turns, { studio, names, texts }: Erasure): Promise<void> =>
  writeAll(turns, { rows: studio }, async ({ db }) => {
    const name = nameAsWord(names);
    const asked = await db
      .selectFrom('open_questions')
      .where('studio_id', '=', studio)
      .select(['no', 'text'])
      .execute();
    for (const { no, text } of asked)
      if (
        (name && text.search(name) >= 0) ||
        texts.some((one) => text === one || (one.length >= tellingLength && text.includes(one)))
      )
        await db
          .deleteFrom('open_questions')
          .where(({ and }) => and({ studio_id: studio, no }))
          .execute();
  });
