import type { Asking, Reply } from '../contract/contract.ts';
import { roundItems } from '../replies/round/roundItems.ts';
import { roundReply } from '../replies/round/roundReply.ts';
import { stripsChart } from '../replies/round/stripsChart.ts';
import type { RoundItem } from '../studio/round/roundItem.ts';
import type { ReminderAbout } from '../studio/remind/reminder.ts';
import type { Composing } from './composeReminder.ts';

/** What everybody in the channel may read: nothing of a member's own. */
const isForAll = (item: RoundItem): boolean =>
  'bucket' in item || (item.kind === 'question' && item.question.by === undefined);

/** The keeper's round with a strip for each bucket; undefined when nothing waits. */
export const morningReminder = async (
  { by }: Extract<ReminderAbout, { kind: 'morning' }>,
  { reminder, book, words, handbook, now }: Composing,
): Promise<Reply | undefined> => {
  const { studio, member } = reminder;
  const asking: Asking = {
    studio,
    member,
    role: 'keeper',
    now,
    happenedAt: now,
    words,
    book,
    handbook,
    typed: {},
  };
  const all = await roundItems(asking);
  const items = by === 'channel' ? all.filter(isForAll) : all;
  if (items.length === 0) return undefined;
  const chart = await stripsChart(await book.studio(), asking);
  return { ...(await roundReply(items, asking)), ...(chart && { chart }) };
};
