import { bucketItems } from '../../studio/round/bucketItems.ts';
import { inOrder } from '../../studio/round/inOrder.ts';
import type { RoundItem } from '../../studio/round/roundItem.ts';
import { coatItems, pieceItems, reminderItems } from '../../studio/round/waitingItems.ts';
import type { StudioNote } from '../../studio/handbook.ts';
import type { Asking } from '../../contract/contract.ts';

/** Only the last ones are looked up, because that costs time. */
const mostQuestions = 20;

/** Which questions a note answers, for as long as the notes stay the same. */
const looked = new WeakMap<readonly StudioNote[], ReadonlyMap<string, boolean>>();

/** The questions that no note answers by now. */
const questionItems = async ({
  book,
  handbook,
  now,
}: Pick<Asking, 'book' | 'handbook' | 'now'>): Promise<RoundItem[]> => {
  const asked = (await book.openQuestions(now)).slice(0, mostQuestions);
  if (asked.length === 0) return [];
  const notes = await book.notes();
  const known = looked.get(notes);
  const answered = new Map(
    asked.map(({ text }) => [text, known?.get(text) ?? handbook.find(text, notes).answers.length > 0]),
  );
  looked.set(notes, answered);
  return asked
    .filter(({ text }) => answered.get(text) !== true)
    .map((question) => ({ kind: 'question', question }));
};

/** Everything on somebody's round, the most urgent first. */
export const roundItems = async (
  asking: Pick<Asking, 'book' | 'handbook' | 'now' | 'member' | 'role'>,
): Promise<RoundItem[]> => {
  const { book, member, role, now } = asking;
  const studio = await book.studio();
  const own = [
    ...reminderItems(await book.reminders(member), now),
    ...coatItems(await book.coats(), studio, asking),
    ...pieceItems(await book.pieces(), asking),
  ];
  if (role !== 'keeper') return inOrder(own);
  const buckets = (await book.buckets()).flatMap((bucket) => bucketItems(bucket, now, studio.sure));
  return inOrder([...own, ...buckets, ...(await questionItems(asking))]);
};
