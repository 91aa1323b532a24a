import { definedOnly } from '../../src/definedOnly.ts';
import { asks, optional, type Asking, type Reply } from '../../src/contract/contract.ts';
import { fromOption } from '../../src/contract/kinds/longList.ts';
import { logOfAll } from '../../src/replies/bucket/logOfAll.ts';
import type { BucketState } from '../../src/studio/bucket/bucketState.ts';
import { describeEntry } from '../../src/replies/bucket/describeEntry.ts';
import { bucket as bucketKind } from '../../src/contract/kinds/bucket.ts';
import { printLine } from '../../src/contract/parseLine.ts';
import { number } from '../../src/contract/kinds/quantities.ts';
import { seq, type Seq } from '../../src/studio/ids.ts';
import { unloggedData } from '../../src/replies/verdict/unloggedReply.ts';
import { isoInstant } from '../../src/studio/time/isoInstant.ts';

/** A bucket's entries, with the changes that nobody logged where they were noticed. */
const logOfOne = async (
  bucket: BucketState,
  range: { most: number; before?: Seq },
  asking: Asking,
): Promise<Reply> => {
  const { words, book } = asking;
  const entries = await book.entries(bucket.no, range);
  const { units } = await book.studio();
  // An unlogged change is listed where it was noticed: before the reading that did not fit.
  const unlogged = (bucket.unlogged ?? []).filter(({ to }) => entries.some(({ seq }) => seq === to.seq));
  const lines = await Promise.all(
    entries.map(async (entry) => [
      await describeEntry(entry, asking),
      ...unlogged.filter(({ to }) => to.seq === entry.seq).map((one) => words.unlogged.inLog(one, units)),
    ]),
  );
  const names = new Map((await book.members()).map(({ id, name }) => [id, name]));
  const last = entries.at(-1);
  const before = (no: number) =>
    printLine(['bucket', 'log'], { ...asking.typed, bucket: String(bucket.no), before: String(no) });
  return {
    kind: 'answer',
    title: words.bucket.logTitle(bucket.settings.name, entries.length),
    reasons: lines.flat(),
    more: {
      of: 'reasons',
      label: words.bucket.older,
      from: [
        ...lines.flatMap((rows, i) => rows.map(() => before((entries[i]?.seq ?? 0) + 1))),
        ...(last && last.seq > 1 && entries.length === range.most ? [before(last.seq)] : []),
      ],
    },
    data: {
      entries: entries.map((entry) => ({
        entry: entry.id,
        at: isoInstant(entry.at),
        loggedAt: isoInstant(entry.loggedAt),
        by: names.get(entry.by) ?? words.someone,
        ...definedOnly({ note: entry.note, noteRemoved: entry.noteRemoved, undoneBy: entry.undoneBy }),
        kind: entry.event.kind,
        event: JSON.parse(JSON.stringify(entry.event)),
      })),
      ...(unlogged.length > 0 && { unlogged: unlogged.map((one) => unloggedData(one, bucket.no)) }),
    },
  };
};

export const logOfBucket = asks({
  name: 'log',
  about: (w) => w.bucket.log,
  who: 'member',
  atOnce: true,
  options: {
    bucket: optional(bucketKind, (w) => w.bucket.logOf),
    most: optional(number(1, 200, '20'), (w) => w.bucket.most),
    before: optional(number(1, 1e9, '41'), (w) => w.bucket.before),
    from: fromOption,
  },
  async run(v, asking) {
    const most = Math.round(v.most ?? 20);
    if (!v.bucket) return logOfAll({ most, ...definedOnly({ from: v.from }) }, asking);
    const before = v.before === undefined ? undefined : seq(Math.round(v.before));
    return logOfOne(v.bucket, { most, ...definedOnly({ before }) }, asking);
  },
});
