import { definedOnly } from '../../definedOnly.ts';
import type { Action, Command, Reply } from '../../contract/contract.ts';
import { whenOption } from '../../contract/withOriginalTime.ts';
import { leafAt, parseLine, printLine } from '../../contract/parseLine.ts';
import { moreAction } from '../../contract/kinds/longList.ts';
import { logWords } from '../../words/bucket/logWords.ts';
import { roomWords } from '../../words/platform/roomWords.ts';
import type { BucketNames, Post, Words } from '../ports.ts';
import type { Did, WireAction, WirePost, WireReply } from '../wire.ts';

/** A verdict's state and its name, as the wall board shows it. */
const stepOf = ({ data }: Reply, words: Words): Pick<WireReply, 'step' | 'stepName' | 'bucket'> => {
  const { verdict, bucket } = data;
  if (typeof verdict !== 'object' || verdict === null || Array.isArray(verdict)) return {};
  const { step, keeperStep } = verdict;
  if (typeof step !== 'string') return {};
  const names: Record<string, string> = words.bucket.stepNames;
  const called = typeof keeperStep === 'string' ? keeperStep : step;
  return { step, stepName: names[called] ?? called, ...(typeof bucket === 'number' && { bucket }) };
};

/** A line split into options, to fill a form. */
const actionOf = (
  { label, line, press }: Pick<Action, 'label' | 'line' | 'press'>,
  commands: Command[],
): WireAction => {
  const parsed = parseLine(line, commands);
  const { path, typed } = parsed.ok ? parsed.value : { path: [], typed: {} };
  return { label, press, line, path, typed };
};

/** A refused line as a form, so that nobody types it again. */
const putRight = ({ line, reply }: Post, commands: Command[]): WireAction[] => {
  if (reply.kind !== 'refusal' || reply.actions?.length) return [];
  const action = actionOf({ label: [roomWords.putRight], line, press: 'edit' }, commands);
  if (action.path.length === 0) return [];
  const leaf = leafAt(commands, action.path);
  const name = leaf && whenOption(leaf);
  const when = name === undefined ? undefined : reply.data[name];
  if (name === undefined || typeof when !== 'string') return [action];
  // It arrived late: the corrected line keeps the original time.
  const typed = { ...action.typed, [name]: when };
  return [{ ...action, typed, line: printLine(action.path, typed) }];
};

const loggedOf = ({ line, reply }: Post, commands: Command[]): WireReply['logged'] => {
  if (!reply.logged) return undefined;
  const text = logWords.logged(reply.logged);
  const slip = `/undo entry:${reply.logged.entry}`;
  const undo = actionOf({ label: [roomWords.undo], line: slip, press: 'run' }, commands);
  const said = parseLine(line, commands);
  const { entry } = reply.logged;
  return said.ok && said.value.path[0] === 'undo' ? { entry, text } : { entry, text, undo };
};

const bucketOptions = ['bucket', 'first', 'second', 'from', 'to'];

/** What was typed, as options. A bucket has its name, although a number or a nickname was typed. */
const didOf = ({ line, reply }: Post, commands: Command[], buckets: BucketNames): Did | undefined => {
  const parsed = parseLine(line, commands);
  if (line === '' || !parsed.ok) return undefined;
  const { path, typed } = parsed.value;
  const { bucket } = reply.data;
  const meant =
    typeof bucket === 'object' && bucket !== null && 'number' in bucket ? bucket['number'] : bucket;
  const named = Object.entries(typed).map(([option, value]) => {
    const no =
      option === 'bucket' && typeof meant === 'number' ? meant : /^\d+$/.test(value) ? Number(value) : NaN;
    return [option, (bucketOptions.includes(option) ? buckets.get(no) : undefined) ?? value] as const;
  });
  return { path, typed: Object.fromEntries(named) };
};

const tookBackOf = ({ data: { undone, alsoUndone } }: Reply): string[] | undefined =>
  typeof undone === 'string' ? [undone, ...(typeof alsoUndone === 'string' ? [alsoUndone] : [])] : undefined;

/** A post as phones receive it: sentences and buttons, without `data`. */
export const wirePost = (
  post: Post,
  { name, buckets }: { name: string; buckets: BucketNames },
  words: Words,
  commands: Command[],
): WirePost => {
  const { no, id, at, member, line, reply, fileKey } = post;
  const logged = loggedOf(post, commands);
  return {
    no,
    id,
    at,
    member,
    name,
    line,
    ...definedOnly({ did: didOf(post, commands, buckets) }),
    private: post.private,
    reply: {
      kind: reply.kind,
      title: reply.title,
      ...definedOnly({ logged, tookBack: tookBackOf(reply) }),
      ...stepOf(reply, words),
      facts: (reply.facts ?? []).map(({ presses, ...fact }) => ({
        ...fact,
        ...(presses && { presses: presses.map((action) => actionOf(action, commands)) }),
      })),
      dont: reply.dont ?? [],
      cautions: reply.cautions ?? [],
      reasons: reply.reasons ?? [],
      actions: [
        ...[...(reply.actions ?? []), ...moreAction(reply)]
          .map((action) => actionOf(action, commands))
          // The undo button stands beside the logged entry, so it is left out here.
          .filter(({ path }) => !logged?.undo || path[0] !== 'undo'),
        ...putRight(post, commands),
      ],
      ...definedOnly({ chart: reply.chart?.alt, file: reply.file?.name, fileKey, once: reply.fleeting }),
    },
  };
};
