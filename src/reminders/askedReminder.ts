import type { Reply } from '../contract/contract.ts';
import { pressToRun } from '../contract/replyParts.ts';
import { verdictActions } from '../replies/verdict/verdictActions.ts';
import type { ReminderAbout } from '../studio/remind/reminder.ts';
import { decide } from '../studio/verdict/decide.ts';
import type { Composing } from './composeReminder.ts';

/** What the bucket needs, once the time is over that its member asked for; undefined if they looked already. */
export const askedReminder = async (
  { bucket: no, since }: Extract<ReminderAbout, { kind: 'asked' }>,
  { reminder, book, words, now }: Composing,
): Promise<Reply | undefined> => {
  const bucket = await book.bucket(no);
  if (!bucket || bucket.retired) return undefined;
  const { efflux, look, believed } = bucket;
  if ([efflux, look, believed].some((seen) => seen !== undefined && seen.at > since)) return undefined;
  const studio = await book.studio();
  const verdict = decide(bucket, { now, role: 'member', sure: studio.sure });
  return {
    kind: 'answer',
    title: words.reminder.asked(bucket.settings.name, words.verdict.title(verdict, studio)),
    dont: verdict.dont.map(words.verdict.dont),
    actions: [
      ...verdictActions(verdict, bucket.settings, { words, role: 'member' }, studio).slice(0, 1),
      pressToRun(words.reminder.tenMore, 'remind later', { reminder: reminder.key, for: '10min' }),
    ],
    data: { reminder: reminder.key, bucket: no },
  };
};
