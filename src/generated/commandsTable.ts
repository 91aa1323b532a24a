import { isGroup, type Command, type Leaf } from '../contract/contract.ts';
import type { Words } from '../words/words.ts';

/** A table row for each command: what to type, who may use it, what it does. */
export const commandsTable = (commands: readonly Command[], words: Words): string => {
  const row = (name: string, leaf: Leaf): string => {
    const needed = Object.entries(leaf.options).flatMap(([option, { needed }]) =>
      needed ? [` ${option}:`] : [],
    );
    return `| \`/${name}${needed.join('')}\` | ${leaf.who} | ${leaf.about(words).replaceAll('|', '\\|')} |`;
  };
  const rows = commands.flatMap((command) =>
    isGroup(command)
      ? command.leaves.map((leaf) => row(`${command.name} ${leaf.name}`, leaf))
      : [row(command.name, command)],
  );
  return ['| type | who | what |', '| --- | --- | --- |', ...rows].join('\n');
};
