import { bucketItems } from '../../studio/round/bucketItems.ts';
import { inOrder } from '../../studio/round/inOrder.ts';
import type { RoundItem } from '../../studio/round/roundItem.ts';
import { coatItems, pieceItems, reminderItems } from '../../studio/round/waitingItems.ts';
import type { Asking } from '../../contract/contract.ts';

/** Questions that a note answers by now are left out, and only the last ones are looked up: that costs time. */
const mostQuestions = 20;

const questionItems = async ({
  book,
  handbook,
  now,
}: Pick<Asking, 'book' | 'handbook' | 'now'>): Promise<RoundItem[]> => {
  const asked = (await book.openQuestions(now)).slice(0, mostQuestions);
  if (asked.length === 0) return [];
  const notes = await book.notes();
  return asked
    .filter(({ text }) => handbook.find(text, notes).answers.length === 0)
    .map((question) => ({ kind: 'question', question }));
};

/** Everything on somebody's round, the most urgent first. */
export const roundItems = async (
  asking: Pick<Asking, 'book' | 'handbook' | 'now' | 'member' | 'role'>,
): Promise<RoundItem[]> => {
  const { book, member, role, now } = asking;
  const own = [
    ...reminderItems(await book.reminders(member), now),
    ...coatItems(await book.coats(), await book.studio(), asking),
    ...pieceItems(await book.pieces(), asking),
  ];
  if (role !== 'keeper') return inOrder(own);
  const buckets = (await book.buckets()).flatMap((bucket) => bucketItems(bucket, now));
  return inOrder([...own, ...buckets, ...(await questionItems(asking))]);
};
