import { pressToRun } from '../../contract/replyParts.ts';
import { isoInstant } from '../../studio/time/isoInstant.ts';
import type { RoundItem } from '../../studio/round/roundItem.ts';
import type { Text } from '../../words/text/text.ts';
import type { Asking, Reply } from '../../contract/contract.ts';
import { longList } from '../../contract/kinds/longList.ts';
import { unloggedData } from '../verdict/unloggedReply.ts';
import { windowFor } from '../verdict/windowProposed.ts';
import type { WindowProposal } from '../../studio/firing/proposeWindow.ts';
import { roundRow, rowKey } from './roundRow.ts';

const amountsOf = (item: RoundItem) =>
  'verdict' in item ? { step: item.verdict.step, ...item.verdict.amounts } : {};

const itemData = (item: RoundItem) => ({
  kind: item.kind,
  ...('bucket' in item && { bucket: item.bucket.no, name: item.bucket.settings.name }),
  ...amountsOf(item),
  ...(item.kind === 'unlogged' && { unlogged: unloggedData(item.change, item.bucket.no) }),
  ...('stirFirst' in item && { stirFirst: item.stirFirst }),
  ...(item.kind === 'coat' && { coat: item.coat.id }),
  ...(item.kind === 'piece' && { piece: item.piece.id }),
  ...(item.kind === 'question' && { question: item.question.text, at: isoInstant(item.question.at) }),
});

/** Windows for the buckets among the rows that have none. */
const windowsFor = async (
  rows: readonly RoundItem[],
  asking: Asking,
): Promise<ReadonlyMap<number, WindowProposal>> => {
  const found = new Map<number, WindowProposal>();
  for (const row of rows) {
    if (!('verdict' in row) || row.verdict.rule !== 'no-window') continue;
    const window = await windowFor(row.bucket, asking);
    if (window) found.set(row.bucket.no, window);
  }
  return found;
};

/** A bucket by its name, in the line that stands alone. */
const firstOf = ([item]: readonly RoundItem[], label: Text): Text =>
  item && 'bucket' in item ? [{ said: item.bucket.settings.name }] : label;

/** What there is to do now, with a press for each row where one will do. */
export const roundReply = async (
  all: readonly RoundItem[],
  asking: Asking,
  from?: string,
): Promise<Reply> => {
  const { words, book, role } = asking;
  const w = words.round;
  const { rows, more } = longList(all, rowKey, from, ['round'], asking);
  const setting = {
    asking,
    studio: await book.studio(),
    members: await book.members(),
    windows: await windowsFor(rows, asking),
  };
  const facts = rows.map((item) => roundRow(item, setting));
  const [first] = facts;
  return {
    kind: 'answer',
    title:
      first === undefined
        ? w.nothing[role]
        : role === 'keeper'
          ? w.title.keeper(all.length, firstOf(rows, first.label))
          : w.title.member(all.length),
    facts,
    ...(role === 'keeper' && {
      actions: [pressToRun(w.log, 'bucket log')],
    }),
    more,
    data: { items: rows.map(itemData) },
  };
};
