import { toRun, toEdit, type Reply } from '../contract/contract.ts';
import type { Desk } from '../contract/desk.ts';
import { printLine } from '../contract/parseLine.ts';
import type { PlainWish } from '../parse/plain/plainWish.ts';
import type { Words } from '../words/words.ts';
import type { Speaker } from './speak.ts';

/** Runs the command that a line wishes for, opens its form, or offers to log what it says. */
export const grantWish = async (
  { path, typed, by }: PlainWish,
  key: string,
  speaker: Speaker,
  { desk, words }: { desk: Desk; words: Words },
): Promise<Reply> => {
  if (by === 'run') return desk.dispatch({ ...speaker, key, path: [...path], typed: { ...typed } });
  const line = printLine(path, typed);
  const w = words.plain;
  if (by === 'log')
    return {
      kind: 'choice',
      title: w.logFired(typed['bucket'] ?? '', typed['result'] ?? ''),
      private: true,
      actions: [toRun(w.logIt, line), toEdit(w.change, line)],
      data: { draft: line, unread: [] },
    };
  const job = words.help.jobs.find((one) => one.line.startsWith(`/${path.join(' ')} `));
  return {
    kind: 'choice',
    title: w.byForm,
    private: true,
    ...(job && { reasons: [w.orType(job.line)] }),
    actions: [toEdit([job?.job ?? line], line)],
    data: { form: line },
  };
};
