import { z } from 'zod';
import type { Transaction } from 'kysely';
import type { Clock } from '../../clock.ts';
import type { Instant, MemberId, StudioId } from '../../studio/ids.ts';
import type { Turns } from '../engine/turns.ts';
import { anInstant, aSeq, aStream } from '../entries/scalarSchemas.ts';
import { writeSetting } from '../logbook/programSettings.ts';
import { during } from '../logbook/readingLogbook.ts';
import type { Tables } from '../migrations/tables.ts';
import { ImportingLogbook } from './importingLogbook.ts';

const record = z.object({
  at: anInstant,
  spans: z.array(z.object({ stream: aStream, from: aSeq, to: aSeq })),
  opened: z.array(aStream),
  takenBack: anInstant.optional(),
});
type ImportRecord = z.infer<typeof record>;

/** What is known of an import: when it was, and whether it was taken back. */
export interface ImportKnown {
  no: number;
  at: Instant;
  entries: number;
  takenBack?: Instant | undefined;
}

type TakenBack = { ok: true; entries: number } | { ok: false; known: ImportKnown[] };

const nameOf = (studio: StudioId, no: number) => `import:${studio}:${no}`;

const readRecords = async (db: Transaction<Tables>, studio: StudioId): Promise<Map<number, ImportRecord>> => {
  const start = nameOf(studio, 0).slice(0, -1);
  const rows = await db
    .selectFrom('kept')
    .where('name', '>=', start)
    .where('name', '<', `${start};`)
    .selectAll()
    .execute();
  return new Map(
    rows.map(({ name, value }) => [Number(name.slice(start.length)), record.parse(JSON.parse(value))]),
  );
};

const writeRecord = (db: Transaction<Tables>, studio: StudioId, no: number, one: ImportRecord) =>
  writeSetting(db, nameOf(studio, no), JSON.stringify(one));

const knownOf = (no: number, { at, spans, takenBack }: ImportRecord): ImportKnown => ({
  no,
  at,
  entries: spans.reduce((sum, { from, to }) => sum + to - from + 1, 0),
  takenBack,
});

/** Imports of old entries: each is one transaction, has a number, and can be taken back as one. */
export interface Imports {
  /** Runs the work in one transaction; `keep` decides whether anything stays. */
  run<T>(
    studio: StudioId,
    work: (book: ImportingLogbook) => Promise<{ keep: boolean; value: T }>,
  ): Promise<{ value: T; no?: number }>;
  /** Takes a whole import back: each of its entries gets an undo. */
  takeBack(studio: StudioId, no: number, by: MemberId): Promise<TakenBack>;
}

export const openImports = (turns: Turns, clock: Clock): Imports => ({
  run: <T>(studio: StudioId, work: (book: ImportingLogbook) => Promise<{ keep: boolean; value: T }>) =>
    turns.write<{ value: T; no?: number }>({ logbook: studio }, (writing) =>
      during(new ImportingLogbook(writing, studio), async (book) => {
        const { keep, value } = await work(book);
        if (!keep || book.added.spans.length === 0) return { keep: false, value: { value } };
        await book.save();
        const no = Math.max(0, ...(await readRecords(writing.db, studio)).keys()) + 1;
        await writeRecord(writing.db, studio, no, { at: clock.now(), ...book.added });
        return { keep: true, value: { value, no } };
      }),
    ),

  takeBack: (studio, no, by) =>
    turns.write<TakenBack>({ logbook: studio }, async (writing) => {
      const records = await readRecords(writing.db, studio);
      const found = records.get(no);
      if (!found || found.takenBack !== undefined) {
        const known = [...records].map(([one, each]) => knownOf(one, each));
        return { keep: false, value: { ok: false, known } };
      }
      const now = clock.now();
      return during(new ImportingLogbook(writing, studio), async (book) => {
        const entries = await book.takeBack(found, { at: now, loggedAt: now, by });
        await book.save();
        await writeRecord(writing.db, studio, no, { ...found, takenBack: now });
        return { keep: true, value: { ok: true, entries } };
      });
    }),
});
