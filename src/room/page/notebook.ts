import { notebookPageWords as words } from '../../words/platform/notebookPageWords.ts';
import type { WireNotebook, WireNotebookQuestion } from '../wire.ts';
import { button, h } from './browser/dom.ts';
import { openSheet } from './lightbox.ts';
import { post } from './browser/net.ts';

const mostBytes = 512 * 1024;

const inBase64 = (file: Blob): Promise<string> =>
  new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.addEventListener('load', () =>
      resolve(typeof reader.result === 'string' ? reader.result.replace(/^[^,]*,/, '') : ''),
    );
    reader.addEventListener('error', () => reject(reader.error ?? new Error(words.empty)));
    reader.readAsDataURL(file);
  });

/** What was answered so far, as the room reads it. */
interface Answers {
  columns: Record<string, string>;
  dates?: string;
  decimal?: string;
  bucket?: string;
  newBuckets?: string;
}

const listOf = (title: string, lines: string[], more = 0): HTMLElement | undefined =>
  lines.length === 0
    ? undefined
    : h(
        'section',
        {},
        h('h3', {}, title),
        h(
          'ol',
          { class: 'notebook-lines' },
          ...lines.map((line) => h('li', {}, line)),
          more > 0 && h('li', {}, words.more(more)),
        ),
      );

const questionField = (
  { ask, of, column, choices }: WireNotebookQuestion,
  place: number,
  answers: Answers,
): HTMLElement => {
  const id = `notebook-${place}`;
  const choose = h(
    'select',
    {
      id,
      change: () => {
        const { value } = choose;
        if (of !== 'column') answers[of] = value;
        else if (column !== undefined) answers.columns[column] = value;
      },
    },
    h('option', { value: '' }, words.pick),
    ...choices.map(({ name, value }) => h('option', { value }, name)),
  );
  return h('div', { class: 'field' }, h('label', { class: 'about', for: id }, ask), choose);
};

/** A sheet in which a keeper brings an old notebook in: tried first, then all of it or nothing. */
export const openNotebook = (): void => {
  const file = h('input', {
    id: 'notebook-file',
    type: 'file',
    accept: '.csv,.txt,.tsv,text/csv,text/plain',
  });
  const paste = h('textarea', {
    id: 'notebook-paste',
    rows: 4,
    placeholder: words.example,
    spellcheck: 'false',
    autocomplete: 'off',
  });
  const result = h('div', { role: 'status' });
  let answers: Answers = { columns: {} };
  // Another file is another notebook.
  for (const input of [file, paste]) input.addEventListener('input', () => (answers = { columns: {} }));

  const say = (said: string) => result.replaceChildren(h('p', { class: 'trouble' }, said));
  const ask = async (path: string, body: object): Promise<void> => {
    result.replaceChildren(h('p', {}, words.working));
    const answer = await post<WireNotebook>(path, body);
    if (answer.ok) show(answer.value);
    else say(answer.said === '' ? words.failed : answer.said);
  };
  const send = async (keep: boolean): Promise<void> => {
    const chosen = file.files?.[0] ?? new Blob([paste.value]);
    if (chosen.size === 0) return say(words.empty);
    if (chosen.size > mostBytes) return say(words.tooBig);
    const text = await inBase64(chosen).catch(() => '');
    if (text === '') return say(words.empty);
    await ask('/api/notebook', { ...answers, file: text, keep });
  };
  const show = ({ said, questions, refused, becomes, more, about, fits, no }: WireNotebook): void => {
    const isPlain = refused.length === 0 && questions.length === 0;
    const quiet = { class: 'stamp quiet' };
    result.replaceChildren(
      h(
        'div',
        { class: 'notebook' },
        h('p', { class: isPlain ? 'lead' : 'trouble' }, h('b', {}, said)),
        ...questions.map((question, i) => questionField(question, i, answers)),
        questions.length > 0 && button(words.again, () => void send(false), quiet),
        fits && button(words.keep, () => void send(true), { class: 'stamp main' }),
        no !== undefined && button(words.undo, () => void ask('/api/notebook/undo', { no }), quiet),
        listOf(words.refused, refused),
        ...about.map((one) => h('p', {}, one)),
        listOf(words.becomes, becomes, more),
      ),
    );
  };
  openSheet(
    words.title,
    h(
      'div',
      { class: 'notebook' },
      h('p', { class: 'lead' }, words.lead),
      h('div', { class: 'field' }, h('label', { class: 'about', for: file.id }, words.file), file),
      h('div', { class: 'field' }, h('label', { class: 'about', for: paste.id }, words.paste), paste),
      button(words.look, () => void send(false), { class: 'stamp' }),
      result,
    ),
  );
};
