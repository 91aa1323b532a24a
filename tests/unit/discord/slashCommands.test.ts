import { describe, expect, test } from 'vitest';
import { type Leaf, isGroup, typedOptions } from '../../../src/contract/contract.ts';
import { form } from '../../../src/discord/render/form.ts';
import { slashCommands } from '../../../src/discord/render/slashCommands.ts';
import { commands } from '../../../src/start/registry.ts';
import { en } from '../../../src/words/en.ts';
import { list } from '../../helpers/discord/discordBody.ts';
import { bodyProblems } from '../../helpers/discord/discordRules.ts';

const leaves: [string, Leaf][] = commands.flatMap((command) =>
  isGroup(command)
    ? command.leaves.map((leaf): [string, Leaf] => [`/${command.name} ${leaf.name}`, leaf])
    : [[`/${command.name}`, command] as [string, Leaf]],
);

describe('every command of the studio', () => {
  test('is one that Discord would register', () => {
    expect(bodyProblems('commands', slashCommands(commands, en), [])).toEqual([]);
  });

  test('is registered with all of its options but those that only a press says', () => {
    for (const command of slashCommands(commands, en)) {
      const mine = commands.find(({ name }) => name === command.name);
      const inside =
        mine && isGroup(mine)
          ? mine.leaves.map(({ name }) => name)
          : typedOptions({ options: mine?.options ?? {} });
      expect(
        list(command.options)
          .map(({ name }) => name)
          .toSorted(),
      ).toEqual(inside.toSorted());
    }
  });

  test.each(leaves)('%s has a form that Discord would open', async (path, leaf) => {
    if (typedOptions(leaf).length === 0) return;
    const data = await form('f//x', path, leaf, {}, en, () => Promise.resolve([]));
    expect(bodyProblems('callback', { type: 9, data }, [])).toEqual([]);
  });
});
