import { definedOnly } from '../definedOnly.ts';
import { plainWish } from '../parse/plain/plainWish.ts';
import { grantWish } from './grantWish.ts';
import { nearestCommand } from './nearestCommand.ts';
import { parseLine, type LineProblem } from '../contract/parseLine.ts';
import { refusal } from '../contract/refusal.ts';
import type { Reply } from '../contract/contract.ts';
import type { Desk, Request } from '../contract/desk.ts';
import type { Words } from '../words/words.ts';

/** Whoever is in need says so in the first words. */
const longestAsked = 1200;

export type Speaker = Pick<Request, 'studio' | 'member' | 'role' | 'now' | 'happenedAt' | 'guest'>;

interface Ports {
  desk: Desk;
  words: Words;
}

const opensQuestion =
  /^(?:what|how|why|when|where|which|who|can|could|is|are|was|do|does|did|should|shall|may|must|will|would|any)\b/i;

/** Whether a line that was typed without a command asks something. */
const asksSomething = (line: string): boolean => line.includes('?') || opensQuestion.test(line.trim());

/** Nobody in need types a command: what tells of an emergency is answered as /ask would. */
const urgentReply = async (
  line: string,
  key: string,
  speaker: Speaker,
  { desk }: Ports,
): Promise<Reply | undefined> => {
  const question = line.trim().replace(/^\//, '').slice(0, longestAsked);
  const reply = await desk.dispatch({ ...speaker, key, path: ['ask'], typed: { question }, probe: true });
  return reply.data['emergency'] === true ? reply : undefined;
};

/** A bare “help” may be a cry or ask for the commands: whom to call comes first, the commands after it. */
const bareHelp = async (key: string, speaker: Speaker, ports: Ports): Promise<Reply> => {
  const commands = await ports.desk.dispatch({ ...speaker, key, path: ['help'], typed: {} });
  const urgent = await urgentReply('emergency', key, speaker, ports);
  if (!urgent) return commands;
  return {
    ...urgent,
    facts: [...(urgent.facts ?? []), ...(commands.facts ?? [])],
    reasons: [...(urgent.reasons ?? []), ...(commands.reasons ?? [])],
    ...(commands.more && { more: commands.more }),
    data: { ...commands.data, ...urgent.data },
  };
};

/** Commands of which the name alone is an everyday word: without a slash and options the line is plain. */
const everyday = new Set(['reading', 'added', 'stirred', 'sieved']);

const isEveryday = (line: string, commands: Desk['commands']): boolean => {
  const parsed = parseLine(line, commands);
  if (!parsed.ok || line.startsWith('/')) return false;
  const { path, typed, after } = parsed.value;
  const [name = ''] = path;
  return (
    everyday.has(name) &&
    after === undefined &&
    Object.keys(typed).join() === 'bucket' &&
    !/bucket:/i.test(line)
  );
};

/** What the line would log, or the bucket that it asks about; undefined if it says neither, or tells of an emergency. */
const plainReply = async (
  words: string,
  key: string,
  speaker: Speaker,
  { desk }: Ports,
): Promise<Reply | undefined> => {
  const reply = await desk.dispatch({ ...speaker, key, path: ['say'], typed: { words } });
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
const plainOrAsked = async (
  line: string,
  why: LineProblem,
  key: string,
  speaker: Speaker,
  ports: Ports,
): Promise<Reply> => {
  const { desk } = ports;
  const refused = notACommand(line, why, ports);
  // “bucket 4 1.46” begins with the name of a group; “dose: …” is a command that went wrong.
  const isPlain = why.kind === 'unknown-command' || why.kind === 'needs-leaf';
  const bare = line.replace(/^\//, '');
  const isCommand =
    line.startsWith('/') &&
    (why.kind !== 'unknown-command' || nearestCommand(why.typed, desk.commands) !== undefined);
  const plain = isPlain && !isCommand ? await plainReply(bare, key, speaker, ports) : undefined;
  if (plain) return plain;
  const question = bare.slice(0, longestAsked);
  const asked = await desk.dispatch({
    ...speaker,
    key,
    path: ['ask'],
    typed: { question },
    // A greeting is not kept for the keepers as a question that nobody could answer.
    ...(!asksSomething(question) && { probe: true }),
  });
  if (asked.data['emergency'] === true) return asked;
  if (!isPlain || line.startsWith('/')) return refused;
  const words = line.split(/\s+/).length;
  const isMisspelt =
    why.kind === 'needs-leaf' ? words < 4 : words < 4 && misspeltCommand(why.typed, desk.commands);
  if (isMisspelt) return refused;
  if (isAnswered(asked)) return asked;
  if (why.kind === 'needs-leaf') return refused;
  const { plain: w, openQuestion } = ports.words;
  const reasons = [...(asked.reasons ?? []), w.howTo];
  return asksSomething(question)
    ? { ...asked, reasons }
    : { ...asked, title: w.nothingHere, reasons: reasons.filter((one) => one !== openQuestion.kept) };
};

/** `/reading gull grey 1.46 13 sec` lacks its options' names: the press that logs what it says comes with the refusal. */
const withDraft = async (
  reply: Reply,
  line: string,
  key: string,
  speaker: Speaker,
  ports: Ports,
): Promise<Reply> => {
  const bare = line.slice(1);
  if (reply.data['option'] !== 'bucket' || reply.actions || !isEveryday(bare, ports.desk.commands))
    return reply;
  const draft = await plainReply(bare, key, speaker, ports);
  return draft?.data['draft'] === undefined
    ? reply
    : { ...reply, ...definedOnly({ actions: draft.actions }) };
};

/** Parses one line, runs it and returns the reply. */
export const speak = async (typed: string, key: string, speaker: Speaker, ports: Ports): Promise<Reply> => {
  const line = typed.trim();
  const { desk } = ports;
  if (/^help[!.\s]*$/i.test(line)) return bareHelp(key, speaker, ports);
  const wish = line.startsWith('/') ? undefined : plainWish(line);
  if (wish) {
    // A piece of free text may hold a cry for help.
    const urgent = wish.by === 'log' && (await urgentReply(line, key, speaker, ports));
    const reply = urgent || (await grantWish(wish, key, speaker, ports));
    return reply.kind === 'refusal' ? ((await urgentReply(line, key, speaker, ports)) ?? reply) : reply;
  }
  const parsed = parseLine(line, desk.commands);
  if (parsed.ok) {
    if (isEveryday(line, desk.commands)) {
      const plain =
        (await plainReply(line, key, speaker, ports)) ?? (await urgentReply(line, key, speaker, ports));
      if (plain) return plain;
    }
    const reply = await desk.dispatch({ ...speaker, key, ...parsed.value });
    if (reply.kind === 'answer') return reply;
    if (line.startsWith('/')) return withDraft(reply, line, key, speaker, ports);
    return (await urgentReply(line, key, speaker, ports)) ?? reply;
  }
  if (parsed.why.kind === 'empty') return notACommand(line, parsed.why, ports);
  return plainOrAsked(line, parsed.why, key, speaker, ports);
};

/** What a line lacks of a command. */
const notACommand = (line: string, why: LineProblem, { desk, words }: Ports): Reply => {
  const refused = (title: Reply['title']): Reply => ({
    ...refusal(title, { line: line.slice(0, 200) }),
    private: true,
  });
  switch (why.kind) {
    case 'empty':
      return refused(words.desk.line.empty);
    case 'unknown-command':
      return refused(words.desk.noCommand(why.typed, nearestCommand(why.typed, desk.commands)));
    case 'needs-leaf':
      return refused(words.desk.line.needsLeaf(why.group, why.leaves));
    case 'twice':
      return refused(words.desk.line.twice(why.option));
    case 'unknown-option':
      return refused(words.desk.line.unknownOption(why.typed, why.near));
    case 'no-option':
      return refused(words.desk.line.noOption(why.path, why.typed, why.have));
    case 'loose':
      return refused(words.desk.line.loose(why.text));
  }
};
