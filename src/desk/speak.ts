import { nearestCommand } from './nearestCommand.ts';
import { parseLine } from '../contract/parseLine.ts';
import { refusal } from '../contract/refusal.ts';
import type { Desk, Reply, Request } from '../contract/contract.ts';
import type { Words } from '../words/words.ts';

/** Whoever is in need says so in the first words. */
const longestAsked = 1200;

export type Speaker = Pick<Request, 'studio' | 'member' | 'role' | 'now' | 'happenedAt' | 'guest'>;

interface Ports {
  desk: Desk;
  words: Words;
}

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

/** Parses one line, runs it and returns the reply. */
export const speak = async (line: string, key: string, speaker: Speaker, ports: Ports): Promise<Reply> => {
  if (/^help[!.\s]*$/i.test(line.trim())) return bareHelp(key, speaker, ports);
  const reply = await spoken(line, key, speaker, ports);
  const isPlain = !line.trim().startsWith('/') || !parseLine(line, ports.desk.commands).ok;
  if (reply.kind === 'answer' || !isPlain) return reply;
  return (await urgentReply(line, key, speaker, ports)) ?? reply;
};

/** The line as a command, and what it lacks of one. */
const spoken = async (
  line: string,
  key: string,
  speaker: Speaker,
  { desk, words }: Ports,
): Promise<Reply> => {
  const parsed = parseLine(line, desk.commands);
  if (parsed.ok) return desk.dispatch({ ...speaker, key, ...parsed.value });
  const refused = (title: Reply['title']): Reply => ({
    ...refusal(title, { line: line.slice(0, 200) }),
    private: true,
  });
  const { why } = parsed;
  switch (why.kind) {
    case 'empty':
      return refused(words.desk.line.empty());
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
