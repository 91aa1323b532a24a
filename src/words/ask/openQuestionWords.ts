import type { Instant } from '../../studio/ids.ts';
import { said, t, type Text } from '../text/text.ts';

export const openQuestionWords = {
  list: 'The questions that nobody could answer yet',
  wanted: 'Ask the keepers for a note on something, with your name',
  answered: 'Take a question off the list of those that nobody could answer',
  question: 'What you want to know',
  which: 'The question, by its number in /note questions',
  kept: t`The keepers will see the question, without your name.`,
  withMyName: t`Ask them, with my name`,
  asked: t`The keepers now see your question with your name.`,
  none: (typed: string): Text =>
    t`There is no open question “${said(typed)}”. /note questions lists the open ones.`,
  dropped: t`It is off the list.`,
  nothing: t`Every question has its answer.`,
  title: (count: number): Text =>
    count === 1 ? t`1 question that nobody could answer.` : t`${count} questions that nobody could answer.`,
  label: (no: number, at: Instant): Text => t`q-${no} · ${{ at, show: 'day' }}`,
};
