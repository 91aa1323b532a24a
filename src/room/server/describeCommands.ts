import { isGroup, type Command, type Leaf } from '../../contract/contract.ts';
import type { Words } from '../ports.ts';
import type { WireLeaf, WireOption } from '../wire.ts';

const describe = (path: string[], leaf: Leaf, words: Words): WireLeaf => ({
  path,
  about: leaf.about(words),
  who: leaf.who,
  effect: leaf.effect,
  options: Object.entries(leaf.options)
    .filter(([, { kind }]) => !kind.pressed)
    .map(([name, { kind, needed, about }]): WireOption => ({
      name,
      about: about(words),
      needed,
      control: kind.control,
      example: kind.example,
      ...(kind.units && { units: kind.units }),
      ...(kind.besides && { besides: kind.besides }),
      suggests: kind.suggest !== undefined,
    })),
  form: leaf.form ?? [],
});

/** What a member may say, with all that a form or a completed line needs to know of it. */
export const describeCommands = (commands: Command[], role: 'member' | 'keeper', words: Words): WireLeaf[] =>
  commands
    .flatMap((command) =>
      isGroup(command)
        ? command.leaves.map((leaf) => describe([command.name, leaf.name], leaf, words))
        : [describe([command.name], command, words)],
    )
    .filter(({ who }) => who === 'member' || role === 'keeper');
