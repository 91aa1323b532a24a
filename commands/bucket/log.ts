import { asks } from '../../src/contract/contract.ts';
import { describeEntry } from '../../src/replies/bucket/describeEntry.ts';
import { bucket } from '../../src/contract/kinds/bucket.ts';
import { printLine } from '../../src/contract/parseLine.ts';
import { number } from '../../src/contract/kinds/quantities.ts';
import { seq } from '../../src/studio/ids.ts';
import { unloggedData } from '../../src/replies/verdict/unloggedReply.ts';
import { isoInstant } from '../../src/studio/time/isoInstant.ts';

export const logOfBucket = asks({
  name: 'log',
  about: (w) => w.bucket.log,
  who: 'member',
  options: {
    bucket: { kind: bucket, needed: true, about: (w) => w.reading.bucket },
    most: { kind: number(1, 200, '20'), needed: false, about: (w) => w.bucket.most },
    before: { kind: number(1, 1e9, '41'), needed: false, about: (w) => w.bucket.before },
  },
  async run(v, asking) {
    const { words, book } = asking;
    const most = Math.round(v.most ?? 20);
    const range = { most, ...(v.before !== undefined && { before: seq(Math.round(v.before)) }) };
    const entries = await book.entries(v.bucket.no, range);
    const { units } = await book.studio();
    // What nobody logged stands where it came to light first: before the reading that did not fit.
    const unlogged = (v.bucket.unlogged ?? []).filter(({ to }) => entries.some(({ seq }) => seq === to.seq));
    const lines = await Promise.all(
      entries.map(async (entry) => [
        await describeEntry(entry, asking),
        ...unlogged.filter(({ to }) => to.seq === entry.seq).map((one) => words.unlogged.inLog(one, units)),
      ]),
    );
    const names = new Map((await book.members()).map(({ id, name }) => [id, name]));
    const last = entries.at(-1);
    const before = (no: number) =>
      printLine(['bucket', 'log'], {
        ...asking.typed,
        bucket: String(v.bucket.no),
        before: String(no),
      });
    return {
      kind: 'answer',
      title: words.bucket.logTitle(v.bucket.settings.name, entries.length),
      reasons: lines.flat(),
      more: {
        of: 'reasons',
        label: words.bucket.older(),
        from: [
          ...lines.flatMap((rows, i) => rows.map(() => before((entries[i]?.seq ?? 0) + 1))),
          ...(last && last.seq > 1 && entries.length === most ? [before(last.seq)] : []),
        ],
      },
      data: {
        entries: entries.map((entry) => ({
          entry: entry.id,
          at: isoInstant(entry.at),
          loggedAt: isoInstant(entry.loggedAt),
          by: names.get(entry.by) ?? words.someone,
          ...(entry.note !== undefined && { note: entry.note }),
          ...(entry.noteRemoved && { noteRemoved: true }),
          ...(entry.undoneBy !== undefined && { undoneBy: entry.undoneBy }),
          kind: entry.event.kind,
          event: JSON.parse(JSON.stringify(entry.event)),
        })),
        ...(unlogged.length > 0 && { unlogged: unlogged.map((one) => unloggedData(one, v.bucket.no)) }),
      },
    };
  },
});
