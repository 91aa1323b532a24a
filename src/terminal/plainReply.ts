import type { Reply } from '../contract/contract.ts';
import { moreAction } from '../contract/kinds/longList.ts';
import { plainText, type Seen } from '../contract/plainText.ts';
import { logWords } from '../words/bucket/logWords.ts';
import { sayWords } from '../words/platform/sayWords.ts';

/** A reply as one JSON object for scripts: sentences as plain text, numbers in `data`. */
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
    actions: [...(reply.actions ?? []), ...moreAction(reply)].map(({ label, line }) => ({
      label: plain(label),
      line,
    })),
    private: reply.private ?? false,
    ...(reply.chart && { chart: reply.chart }),
    ...(reply.file && { file: reply.file }),
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

/** A reply as lines for a person: the answer first, then facts, what not to do, cautions, reasons, and what to type next. */
export const replyLines = (reply: Reply, seen: Seen, width = 80, keptAs?: string): string => {
  const plain = (text: Reply['title']) => plainText(text, seen);
  const list = (mark: string, texts: Reply['dont']) =>
    (texts ?? []).map((text) => `  ${mark} ${wrapped(plain(text), '    ', width)}`);
  const facts = (reply.facts ?? []).map(
    ({ label, text }) => `  ${plain(label)}: ${wrapped(plain(text), '    ', width)}`,
  );
  const actions = [...(reply.actions ?? []), ...moreAction(reply)].map(
    ({ label, line }) => `  > ${plain(label)}:  ${line}`,
  );
  const told = keptAs === undefined ? sayWords.fileComes : sayWords.fileKept;
  const file = reply.file ? [`  ${told(keptAs ?? reply.file.name)}`] : [];
  return [
    wrapped(plain(reply.title), '', width),
    ...(reply.logged ? [`  ${wrapped(plain(logWords.logged(reply.logged)), '    ', width)}`] : []),
    ...facts,
    ...list('x', reply.dont),
    ...list('!', reply.cautions),
    ...list('-', reply.reasons),
    ...actions,
    ...file,
  ].join('\n');
};
