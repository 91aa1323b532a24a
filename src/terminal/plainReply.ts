import { definedOnly } from '../definedOnly.ts';
import type { Reply } from '../contract/contract.ts';
import { moreAction } from '../contract/kinds/longList.ts';
import { rowActions } from '../contract/rowActions.ts';
import { type Seen, plainText, withoutControls, withoutControlsInLines } from '../contract/plainText.ts';
import { logWords } from '../words/bucket/logWords.ts';
import { sayWords } from '../words/platform/sayWords.ts';

/** JSON on one line. Control characters that JSON allows are escaped too, so that none acts on the terminal. */
export const jsonLine = (value: object): string =>
  JSON.stringify(value).replace(
    /[\u007F-\u009F\u061C\u200B-\u200F\u2028-\u202E\u2060-\u2069\uFEFF]/g,
    (char) => `\\u${char.charCodeAt(0).toString(16).padStart(4, '0')}`,
  );

/** A reply as one JSON object for scripts: text as plain strings, numbers in `data`. */
export const replyJson = (reply: Reply, seen: Seen): object => {
  const plain = (text: Reply['title']) => plainText(text, seen);
  return {
    ok: reply.kind === 'answer',
    kind: reply.kind,
    title: plain(reply.title),
    ...(reply.logged && { logged: { entry: reply.logged.entry, text: plain(reply.logged.text) } }),
    facts: (reply.facts ?? []).map(({ label, text }) => ({ label: plain(label), text: plain(text) })),
    reasons: (reply.reasons ?? []).map(plain),
    dont: (reply.dont ?? []).map(plain),
    cautions: (reply.cautions ?? []).map(plain),
    actions: [...(reply.actions ?? []), ...rowActions(reply), ...moreAction(reply)].map(
      ({ label, line }) => ({
        label: plain(label),
        line,
      }),
    ),
    private: reply.private ?? false,
    ...definedOnly({ chart: reply.chart, file: reply.file }),
    data: reply.data,
  };
};

const wrapped = (text: string, indent: string, width: number): string => {
  const lines: string[] = [];
  let line = '';
  for (const word of text.split(' ')) {
    if (line !== '' && line.length + 1 + word.length > width - indent.length) {
      lines.push(line);
      line = word;
    } else line = line === '' ? word : `${line} ${word}`;
  }
  return [...lines, line].join(`\n${indent}`);
};

/** A reply as lines of text: the answer, facts, what not to do, cautions, reasons, and suggested commands. */
export const replyLines = (reply: Reply, seen: Seen, width = 80, keptAs?: string): string => {
  const plain = (text: Reply['title']) => plainText(text, seen);
  const list = (mark: string, texts: Reply['dont']) =>
    (texts ?? []).map((text) => `  ${mark} ${wrapped(plain(text), '    ', width)}`);
  const facts = (reply.facts ?? []).map(
    ({ label, text }) => `  ${plain(label)}: ${wrapped(plain(text), '    ', width)}`,
  );
  const actions = [...(reply.actions ?? []), ...rowActions(reply), ...moreAction(reply)].map(
    ({ label, line }) => `  > ${plain(label)}:  ${withoutControls(line)}`,
  );
  const told = keptAs === undefined ? sayWords.fileComes : sayWords.fileKept;
  const file = reply.file ? [`  ${told(keptAs ?? reply.file.name)}`] : [];
  const lines = [
    wrapped(plain(reply.title), '', width),
    ...(reply.logged ? [`  ${wrapped(plain(logWords.logged(reply.logged)), '    ', width)}`] : []),
    ...facts,
    ...list('x', reply.dont),
    ...list('!', reply.cautions),
    ...list('-', reply.reasons),
    ...actions,
    ...file,
  ];
  return withoutControlsInLines(lines.join('\n'));
};
