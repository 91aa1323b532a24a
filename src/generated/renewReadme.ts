import type { Command } from '../contract/contract.ts';
import type { Words } from '../words/words.ts';
import { commandsTable } from './commandsTable.ts';

const table = /(<!-- commands -->\n)[^]*?(<!-- end of commands -->)/;
const session = /(```console\n)([^]*?)(\n```)/g;

export interface ReadmeSources {
  commands: readonly Command[];
  words: Words;
  /** What the demo studio answers a line. */
  answer(line: string): Promise<string>;
}

/** The README with what comes from the program worked out anew: its table of commands, and the answers in its console sessions. */
export const renewReadme = async (
  readme: string,
  { commands, words, answer }: ReadmeSources,
): Promise<string> => {
  if (!table.test(readme)) throw new Error('the README has no <!-- commands --> to fill');
  let renewed = readme.replace(
    table,
    (_, start: string, end: string) => `${start}${commandsTable(commands, words)}\n${end}`,
  );
  for (const [whole, start = '', typed = '', end = ''] of readme.matchAll(session)) {
    const said: string[] = [];
    for (const line of typed.split('\n').filter((one) => one.startsWith('> /')))
      said.push(`${line}\n${await answer(line.slice(2))}`);
    if (said.length === 0) throw new Error(`nothing is typed in this session:\n${typed}`);
    renewed = renewed.replace(whole, () => `${start}${said.join('\n\n')}${end}`);
  }
  return renewed;
};
