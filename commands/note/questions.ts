import { asks, logs, needed } from '../../src/contract/contract.ts';
import { fromOption, longList } from '../../src/contract/kinds/longList.ts';
import { openQuestion } from '../../src/contract/kinds/openQuestion.ts';
import { text } from '../../src/contract/kinds/texts.ts';
import { roundRow } from '../../src/replies/round/roundRow.ts';
import { isoInstant } from '../../src/studio/time/isoInstant.ts';

export const listQuestions = asks({
  name: 'questions',
  about: (w) => w.openQuestion.list,
  who: 'keeper',
  options: { from: fromOption },
  async run(v, asking) {
    const { words, book, now } = asking;
    const all = await book.openQuestions(now);
    const { rows, more } = longList(all, ({ no }) => String(no), v.from, ['note', 'questions'], asking);
    const setting = { asking, studio: await book.studio(), members: await book.members() };
    return {
      kind: 'answer',
      title: all.length === 0 ? words.openQuestion.nothing : words.openQuestion.title(all.length),
      facts: rows.map((question) => ({
        ...roundRow({ kind: 'question', question }, setting),
        label: words.openQuestion.label(question.no, question.at),
      })),
      more,
      data: {
        questions: rows.map(({ no, text: asked, at, times }) => ({
          question: no,
          text: asked,
          at: isoInstant(at),
          times,
        })),
      },
    };
  },
});

/** Who presses it agrees that the keepers learn who asked. */
export const wantNote = logs({
  name: 'wanted',
  about: (w) => w.openQuestion.wanted,
  who: 'member',
  private: true,
  options: { question: needed(text(600, 'which glaze may go inside a mug'), (w) => w.openQuestion.question) },
  async run({ question }, { words, book, now, member }) {
    await book.keepQuestion({ text: question, at: now, by: member });
    return { kind: 'answer', title: words.openQuestion.asked, data: {} };
  },
});

export const dropQuestion = logs({
  name: 'answered',
  about: (w) => w.openQuestion.answered,
  who: 'keeper',
  private: true,
  options: { question: needed(openQuestion, (w) => w.openQuestion.which) },
  async run({ question }, { words, book }) {
    await book.dropQuestion(question.no);
    return { kind: 'answer', title: words.openQuestion.dropped, data: { question: question.no } };
  },
});
