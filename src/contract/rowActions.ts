import type { Action, Reply } from './contract.ts';

/** What can be pressed for the shown rows, each labelled with its row, for platforms that list it apart from them. */
export const rowActions = ({ facts = [] }: Pick<Reply, 'facts'>, shown = facts.length): Action[] =>
  facts
    .slice(0, shown)
    .flatMap(({ label, presses = [] }) =>
      presses.map((press) => ({ ...press, label: [...label, ': ', ...press.label] })),
    );
