import { definedOnly } from '../../definedOnly.ts';
import { answersAtOnce, isGroup, type Command, type Leaf } from '../../contract/contract.ts';
import type { Words } from '../ports.ts';
import type { WireLeaf, WireOption } from '../wire.ts';

const describe = (path: string[], leaf: Leaf, words: Words): WireLeaf => ({
  path,
  about: leaf.about(words),
  who: leaf.who,
  effect: leaf.effect,
  ...(answersAtOnce(leaf) && { atOnce: true }),
  options: Object.entries(leaf.options)
    .filter(([, { kind }]) => !kind.pressed)
    .map(([name, { kind, needed, about }]): WireOption => ({
      name,
      about: about(words),
      needed,
      control: kind.control,
      example: kind.example,
      ...definedOnly({ units: kind.units, besides: kind.besides }),
      suggests: kind.suggest !== undefined,
    })),
  form: leaf.form ?? [],
});

/** The commands for a role, with all that forms and completion need. */
export const describeCommands = (commands: Command[], role: 'member' | 'keeper', words: Words): WireLeaf[] =>
  commands
    .flatMap((command) =>
      isGroup(command)
        ? command.leaves.map((leaf) => describe([command.name, leaf.name], leaf, words))
        : [describe([command.name], command, words)],
    )
    .filter(({ who }) => who === 'member' || role === 'keeper');
