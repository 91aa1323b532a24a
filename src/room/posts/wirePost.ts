import type { Action, Command, Reply } from '../../contract/contract.ts';
import { parseLine, printLine } from '../../contract/parseLine.ts';
import { moreAction } from '../../contract/kinds/longList.ts';
import { logWords } from '../../words/bucket/logWords.ts';
import { roomWords } from '../../words/platform/roomWords.ts';
import type { Post, Words } from '../ports.ts';
import type { WireAction, WirePost, WireReply } from '../wire.ts';

/** The state of its bucket, when the reply is a verdict, and what it is called, as on the wall. */
const stepOf = ({ data }: Reply, words: Words): Pick<WireReply, 'step' | 'stepName'> => {
  const { verdict } = data;
  if (typeof verdict !== 'object' || verdict === null || Array.isArray(verdict)) return {};
  const { step, keeperStep } = verdict;
  if (typeof step !== 'string') return {};
  const names: Record<string, string> = words.bucket.stepNames;
  const called = typeof keeperStep === 'string' ? keeperStep : step;
  return { step, stepName: names[called] ?? called };
};

/** A line taken apart, to fill a form with. */
const actionOf = (
  { label, line, press }: Pick<Action, 'label' | 'line' | 'press'>,
  commands: Command[],
): WireAction => {
  const parsed = parseLine(line, commands);
  const { path, typed } = parsed.ok ? parsed.value : { path: [], typed: {} };
  return { label, press, line, path, typed };
};

/** What was refused can be put right where it was said: nobody types it twice. */
const putRight = ({ line, reply }: Post, commands: Command[]): WireAction[] => {
  if (reply.kind !== 'refusal' || reply.actions?.length) return [];
  const action = actionOf({ label: [roomWords.putRight], line, press: 'edit' }, commands);
  if (action.path.length === 0) return [];
  const { when } = reply.data;
  if (typeof when !== 'string') return [action];
  // It came late: what is put right is still of then.
  const typed = { ...action.typed, when };
  return [{ ...action, typed, line: printLine(action.path, typed) }];
};

const loggedOf = ({ line, reply }: Post, commands: Command[]): WireReply['logged'] => {
  if (!reply.logged) return undefined;
  const text = logWords.logged(reply.logged);
  const slip = `/undo entry:${reply.logged.entry}`;
  const undo = actionOf({ label: [roomWords.undo], line: slip, press: 'run' }, commands);
  const said = parseLine(line, commands);
  return said.ok && said.value.path[0] === 'undo' ? { text } : { text, undo };
};

/** A post as a phone is sent it: the sentences and presses of the reply, not the figures for scripts. */
export const wirePost = (post: Post, name: string, words: Words, commands: Command[]): WirePost => {
  const { no, id, at, member, line, reply } = post;
  const logged = loggedOf(post, commands);
  return {
    no,
    id,
    at,
    member,
    name,
    line,
    private: post.private,
    reply: {
      kind: reply.kind,
      title: reply.title,
      ...(logged && { logged }),
      ...stepOf(reply, words),
      facts: reply.facts ?? [],
      dont: reply.dont ?? [],
      cautions: reply.cautions ?? [],
      reasons: reply.reasons ?? [],
      actions: [
        ...[...(reply.actions ?? []), ...moreAction(reply)]
          .map((action) => actionOf(action, commands))
          // Taking it back stands beside what was logged already.
          .filter(({ path }) => !logged?.undo || path[0] !== 'undo'),
        ...putRight(post, commands),
      ],
      ...(reply.chart && { chart: reply.chart.alt }),
      ...(reply.file && { file: reply.file.name }),
    },
  };
};
