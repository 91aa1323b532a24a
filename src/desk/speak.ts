import { nearestCommand } from './nearestCommand.ts';
import { parseLine } from '../contract/parseLine.ts';
import type { Desk, Reply, Request } from '../contract/contract.ts';
import type { Words } from '../words/words.ts';

export type Speaker = Pick<Request, 'studio' | 'member' | 'role' | 'now' | 'happenedAt' | 'guest'>;

/** One line in, one reply out. */
export const speak = async (
  line: string,
  key: string,
  speaker: Speaker,
  { desk, words }: { desk: Desk; words: Words },
): Promise<Reply> => {
  const parsed = parseLine(line, desk.commands);
  if (parsed.ok) return desk.dispatch({ ...speaker, key, ...parsed.value });
  const refused = (title: Reply['title']): Reply => ({
    kind: 'refusal',
    title,
    private: true,
    data: { line: line.slice(0, 200) },
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
