import type { OpenQuestion } from '../../studio/openQuestion.ts';
import type { Kind } from '../contract.ts';

/** A question that nobody could answer yet, by its number. */
export const openQuestion: Kind<OpenQuestion> = {
  control: 'text',
  example: 'q-1',
  async read(typed, { book, now, words }) {
    const wanted = Number(/^\s*(?:q-)?(\d{1,9})\s*$/i.exec(typed)?.[1]);
    const found = (await book.openQuestions(now)).find(({ no }) => no === wanted);
    return found ? { ok: true, value: found } : { ok: false, why: words.openQuestion.none(typed) };
  },
  async suggest(typed, { book, now }) {
    const wanted = typed.toLowerCase();
    return (await book.openQuestions(now))
      .filter(({ no, text }) => `q-${no}` === wanted || text.toLowerCase().includes(wanted))
      .map(({ no, text }) => ({ name: `q-${no} · ${text}`, value: `q-${no}` }));
  },
};
