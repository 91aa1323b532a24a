import type { Transaction } from 'kysely';
import { v7 as uuidv7 } from 'uuid';
import type { Clock } from '../../clock.ts';
import type { Entry } from '../../studio/entry.ts';
import type { StudioNote } from '../../studio/handbook.ts';
import {
  studioId,
  studioStream,
  type Instant,
  type Seq,
  type StreamNo,
  type StudioId,
} from '../../studio/ids.ts';
import type { Logbook, LoggedEvent, Member, Notes } from '../../studio/logbook/ports.ts';
import { StoreProblem } from '../engine/storeProblem.ts';
import type { Turns } from '../engine/turns.ts';
import { withoutNul, withoutNulWithin } from '../engine/withoutNul.ts';
import { insertEntry } from '../entries/insertEntry.ts';
import { during, ReadingLogbook } from '../logbook/readingLogbook.ts';
import type { Tables } from '../migrations/tables.ts';
import { addMember, studioIdentified } from '../people/identities.ts';
import { replanCoats } from '../reminders/replanStudio.ts';
import { refoldAndSave } from '../states/refoldAndSave.ts';
import { saveStreamState } from '../states/saveStreamState.ts';
import { ImportProblem } from './importProblem.ts';

/** A studio as an export tells of it. */
export interface BroughtStudio {
  name: string;
  /** The Discord server that it is for. */
  server?: string;
  members: readonly Member[];
  notes: readonly StudioNote[];
  entries: Iterable<Entry<LoggedEvent> & Notes>;
}

type Db = Transaction<Tables>;

const addStudio = async (db: Db, { name, server }: BroughtStudio, now: Instant): Promise<StudioId> => {
  const studios = await db.selectFrom('studios').select(['id', 'name']).execute();
  if (studios.some((one) => one.name === name || one.id === name))
    throw new ImportProblem({ kind: 'exists', name });
  const id = studioId(uuidv7({ msecs: now }));
  await db.insertInto('studios').values({ id, name, created_at: now }).execute();
  if (server === undefined) return id;
  const identity = { platform: 'discord', external_id: server };
  if (await studioIdentified(db, identity.platform, server))
    throw new ImportProblem({ kind: 'server-known', server });
  await db
    .insertInto('studio_identities')
    .values({ ...identity, studio_id: id })
    .execute();
  return id;
};

/** At the terminal each goes by their name, so that whoever runs the bot can get a code for them to link with. */
const addMembers = async (db: Db, studio: StudioId, members: readonly Member[], now: Instant) => {
  const known = new Map<string, Member>();
  for (const { id, name: typed } of members) {
    const name = withoutNul(typed);
    const called = known.has(name) ? `${name} ${id.slice(-4)}` : name;
    known.set(called, { id, name });
    const identity = { studio_id: studio, platform: 'terminal', external_id: called };
    await addMember(db, identity, { id, name, now });
  }
  return [...known].flatMap(([called, { name }]) => (called === name ? [] : [called]));
};

const addNotes = async (db: Db, studio: StudioId, notes: readonly StudioNote[]) => {
  for (const { no, title, text, words, by, at } of notes)
    await db
      .insertInto('studio_notes')
      .values({ studio_id: studio, no, member_id: by, at, ...withoutNulWithin({ title, text, words }) })
      .execute();
};

const addEntries = async (db: Db, studio: StudioId, entries: BroughtStudio['entries']) => {
  const streams = new Map<StreamNo, Seq>();
  let count = 0;
  for (const { note, noteRemoved, ...entry } of entries) {
    await insertEntry(db, studio, { ...entry, event: withoutNulWithin(entry.event) }, note);
    if (noteRemoved)
      // The export does not say which keeper removed it.
      await db
        .insertInto('notes')
        .values({
          studio_id: studio,
          stream_no: entry.stream,
          seq: entry.seq,
          note: '',
          removed_by: entry.by,
        })
        .execute();
    streams.set(entry.stream, entry.seq);
    count += 1;
  }
  for (const [stream, last] of streams)
    if (stream > studioStream) await refoldAndSave(db, studio, stream, last);
    else await saveStreamState(db, studio, stream, { seq: last });
  return count;
};

/** Writes a whole new studio in one transaction, unless `check` throws when it has looked at the result. */
export const bringStudioIn = (
  turns: Turns,
  clock: Clock,
  brought: BroughtStudio,
  check: (book: Logbook) => Promise<void>,
): Promise<{ id: StudioId; entries: number; namesakes: string[] }> => {
  let begun = false;
  return turns.write('directory', async (writing) => {
    // The entries can be read once only: a second try would bring in a studio without them.
    if (begun) throw new StoreProblem('unreachable', turns.name, 'the connection was lost during the import');
    begun = true;
    const { db } = writing;
    const now = clock.now();
    const id = await addStudio(db, brought, now);
    const namesakes = await addMembers(db, id, brought.members, now);
    await addNotes(db, id, brought.notes);
    const entries = await addEntries(db, id, brought.entries);
    await during(new ReadingLogbook(writing, id), async (book) => {
      await check(book);
      await replanCoats({ db, id, studio: await book.studio(), now }, [], await book.coats());
    });
    return { keep: true, value: { id, entries, namesakes } };
  });
};
