import { definedOnly } from '../definedOnly.ts';
import { refusal, type Reply } from '../contract/contract.ts';
import type { Desk, Request } from '../contract/desk.ts';
import { parseLine, type LineProblem } from '../contract/parseLine.ts';
import { plainWish } from '../parse/plain/plainWish.ts';
import type { Words } from '../words/words.ts';
import { grantWish } from './grantWish.ts';
import { nearestCommand } from './nearestCommand.ts';

/** Whoever is in need says so in the first words. */
const longestAsked = 1200;

export type Speaker = Pick<Request, 'studio' | 'member' | 'role' | 'now' | 'happenedAt' | 'guest'>;

interface Ports {
  desk: Desk;
  words: Words;
}

/** A line, and how to run a command for whoever typed it. */
interface Spoken extends Ports {
  line: string;
  hasSlash: boolean;
  /** The line without its slash. */
  bare: string;
  run(path: [string], typed: Request['typed'], probe?: true): Promise<Reply>;
}

const opensQuestion =
  /^(?:what|how|why|when|where|which|who|can|could|is|are|was|do|does|did|should|shall|may|must|will|would|any)\b/i;

/** Whether a line that was typed without a command asks something. */
const asksSomething = (line: string): boolean => line.includes('?') || opensQuestion.test(line.trim());

/** Nobody in need types a command: what tells of an emergency is answered as /ask would. */
const urgentReply = async ({ run, bare }: Spoken, said = bare): Promise<Reply | undefined> => {
  const reply = await run(['ask'], { question: said.slice(0, longestAsked) }, true);
  return reply.data['emergency'] === true ? reply : undefined;
};

/** A bare “help” may be a cry or ask for the commands: whom to call comes first, the commands after it. */
const bareHelp = async (spoken: Spoken): Promise<Reply> => {
  const commands = await spoken.run(['help'], {});
  const urgent = await urgentReply(spoken, 'emergency');
  if (!urgent) return commands;
  return {
    ...urgent,
    facts: [...(urgent.facts ?? []), ...(commands.facts ?? [])],
    reasons: [...(urgent.reasons ?? []), ...(commands.reasons ?? [])],
    ...definedOnly({ more: commands.more }),
    data: { ...commands.data, ...urgent.data },
  };
};

/** Commands of which the name alone is an everyday word: without a slash and options the line is plain. */
const everyday = new Set(['reading', 'added', 'stirred', 'sieved']);

const isEveryday = (line: string, commands: Desk['commands']): boolean => {
  const parsed = parseLine(line, commands);
  if (!parsed.ok || line.startsWith('/')) return false;
  const { path, typed, after } = parsed.value;
  const isBucketAlone = Object.keys(typed).join() === 'bucket' && !/bucket:/i.test(line);
  return everyday.has(path[0] ?? '') && after === undefined && isBucketAlone;
};

/** What the line would log, or the bucket that it asks about; undefined if it says neither, or tells of an emergency. */
const plainReply = async ({ run, bare }: Spoken): Promise<Reply | undefined> => {
  const reply = await run(['say'], { words: bare });
  return reply.data['plain'] === undefined && reply.data['emergency'] !== true ? reply : undefined;
};

/** `bukcet`, but not `fire`, which is a word of its own and begins a command by chance. */
const misspeltCommand = (typed: string, commands: Desk['commands']): boolean => {
  const near = typed.length < 4 ? undefined : nearestCommand(typed, commands);
  return near !== undefined && !near.startsWith(typed.toLowerCase());
};

const isAnswered = ({ data }: Reply): boolean =>
  data['verdict'] !== undefined || (Array.isArray(data['answers']) && data['answers'].length > 0);

/** A line that is no command: an emergency, something to log, or a question. */
const plainOrAsked = async (spoken: Spoken, why: LineProblem): Promise<Reply> => {
  const { line, hasSlash, bare, desk, words, run } = spoken;
  const refused = notACommand(spoken, why);
  // “bucket 4 1.46” begins with the name of a group; “dose: …” is a command that went wrong.
  const isPlain = why.kind === 'unknown-command' || why.kind === 'needs-leaf';
  const isCommand =
    hasSlash && (why.kind !== 'unknown-command' || nearestCommand(why.typed, desk.commands) !== undefined);
  const plain = isPlain && !isCommand ? await plainReply(spoken) : undefined;
  if (plain) return plain;
  const question = bare.slice(0, longestAsked);
  const isQuestion = asksSomething(question);
  // A greeting is not kept for the keepers as a question that nobody could answer.
  const asked = await run(['ask'], { question }, isQuestion ? undefined : true);
  if (asked.data['emergency'] === true) return asked;
  if (!isPlain || hasSlash) return refused;
  const isShort = line.split(/\s+/).length < 4;
  if (isShort && (why.kind === 'needs-leaf' || misspeltCommand(why.typed, desk.commands))) return refused;
  if (isAnswered(asked)) return asked;
  if (why.kind === 'needs-leaf') return refused;
  const { plain: w, openQuestion } = words;
  const reasons = [...(asked.reasons ?? []), w.howTo];
  return isQuestion
    ? { ...asked, reasons }
    : { ...asked, title: w.nothingHere, reasons: reasons.filter((one) => one !== openQuestion.kept) };
};

/** `/reading gull grey 1.46 13 sec` lacks its options' names: the press that logs what it says comes with the refusal. */
const withDraft = async (reply: Reply, spoken: Spoken): Promise<Reply> => {
  const { bare, desk } = spoken;
  if (reply.data['option'] !== 'bucket' || reply.actions || !isEveryday(bare, desk.commands)) return reply;
  const draft = await plainReply(spoken);
  return draft?.data['draft'] === undefined
    ? reply
    : { ...reply, ...definedOnly({ actions: draft.actions }) };
};

/** Parses one line, runs it and returns the reply. */
export const speak = async (typed: string, key: string, speaker: Speaker, ports: Ports): Promise<Reply> => {
  const { desk, words } = ports;
  const line = typed.trim();
  const spoken: Spoken = {
    desk,
    words,
    line,
    hasSlash: line.startsWith('/'),
    bare: line.replace(/^\//, ''),
    run: (path, options, probe) =>
      desk.dispatch({ ...speaker, key, path, typed: options, ...definedOnly({ probe }) }),
  };
  if (/^help[!.\s]*$/i.test(line)) return bareHelp(spoken);
  const wish = spoken.hasSlash ? undefined : plainWish(line);
  if (wish) {
    // A piece of free text may hold a cry for help.
    const urgent = wish.by === 'log' ? await urgentReply(spoken) : undefined;
    const reply = urgent ?? (await grantWish(wish, key, speaker, ports));
    return reply.kind === 'refusal' ? ((await urgentReply(spoken)) ?? reply) : reply;
  }
  const parsed = parseLine(line, desk.commands);
  if (!parsed.ok)
    return parsed.why.kind === 'empty' ? notACommand(spoken, parsed.why) : plainOrAsked(spoken, parsed.why);
  if (isEveryday(line, desk.commands)) {
    const plain = (await plainReply(spoken)) ?? (await urgentReply(spoken));
    if (plain) return plain;
  }
  const reply = await desk.dispatch({ ...speaker, key, ...parsed.value });
  if (reply.kind === 'answer') return reply;
  return spoken.hasSlash ? withDraft(reply, spoken) : ((await urgentReply(spoken)) ?? reply);
};

/** What a line lacks of a command. */
const notACommand = ({ line, desk, words: { desk: w } }: Spoken, why: LineProblem): Reply => {
  const refused = (title: Reply['title']): Reply => refusal(title, { line: line.slice(0, 200) });
  switch (why.kind) {
    case 'empty':
      return refused(w.line.empty);
    case 'unknown-command':
      return refused(w.noCommand(why.typed, nearestCommand(why.typed, desk.commands)));
    case 'needs-leaf':
      return refused(w.line.needsLeaf(why.group, why.leaves));
    case 'twice':
      return refused(w.line.twice(why.option));
    case 'unknown-option':
      return refused(w.line.unknownOption(why.typed, why.near));
    case 'no-option':
      return refused(w.line.noOption(why.path, why.typed, why.have));
    case 'loose':
      return refused(w.line.loose(why.text));
  }
};
