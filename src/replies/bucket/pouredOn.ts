import type { Logging, Reply } from '../../contract/contract.ts';
import { pressToRun } from '../../contract/replyParts.ts';
import type { Seq, StreamNo } from '../../studio/ids.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { BucketCaution } from '../../studio/settings/bucketSettings.ts';

const page = 200;
/** A press for each; the sentence names the others. */
const mostPresses = 5;

type Book = Pick<Logging['book'], 'entries'>;

/** The buckets that glaze of this one was poured into, since it was last made anew. */
const pouredFrom = async (no: StreamNo, book: Book): Promise<Set<StreamNo>> => {
  const found = new Set<StreamNo>();
  let before: Seq | undefined;
  for (;;) {
    const entries = await book.entries(no, { most: page, ...(before !== undefined && { before }) });
    for (const { event, undoneBy } of entries) {
      if (undoneBy !== undefined || event.kind !== 'addition') continue;
      const { added } = event;
      if (added.what === 'taken' && added.to !== undefined) found.add(added.to);
      if (event.remake) return found;
    }
    const last = entries.at(-1);
    if (!last || entries.length < page) return found;
    before = last.seq;
  }
};

/** What a bucket was just marked with may be in others by now: which, and a press for each that marks it too. */
export const pouredOn = async (
  state: BucketState,
  before: readonly BucketCaution[],
  { book, words: { bucket: w } }: Logging,
): Promise<Required<Pick<Reply, 'cautions' | 'actions'>>> => {
  const fresh = state.settings.cautions.filter((one) => one !== 'children' && !before.includes(one));
  if (fresh.length === 0) return { cautions: [], actions: [] };
  const reached = await pouredFrom(state.no, book);
  const others = (await book.buckets()).flatMap(({ no, seq, retired, settings: { name, cautions } }) => {
    const missing = fresh.filter((one) => !cautions.includes(one));
    if (retired || !reached.has(no) || missing.length === 0) return [];
    const all = [...cautions.filter((one) => one !== 'children'), ...missing];
    const typed = { bucket: String(no), cautions: all.join(', ') };
    return [{ no, name, mark: pressToRun(w.markToo(name), 'bucket change', typed, seq) }];
  });
  return {
    cautions: others.length > 0 ? [w.pouredOn(others, fresh)] : [],
    actions: others.slice(0, mostPresses).map(({ mark }) => mark),
  };
};
