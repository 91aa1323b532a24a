import type { Action, Command, Fact, Reply } from '../contract/contract.ts';
import type { Request } from '../contract/desk.ts';
import { isForKeepers } from '../contract/parseLine.ts';
import { onceEach } from '../replies/verdict/onceEach.ts';

const withAllowedPresses = (fact: Fact, may: (action: Action) => boolean): Fact =>
  fact.presses ? { ...fact, presses: fact.presses.filter(may) } : fact;

/** Drops the actions that the member's role does not allow. */
export const withAllowedActions = (reply: Reply, role: Request['role'], commands: Command[]): Reply => {
  const { actions, cautions, facts } = reply;
  const may = ({ line }: Action): boolean => !isForKeepers(line, commands);
  return {
    ...reply,
    ...(actions && role !== 'keeper' && { actions: actions.filter(may) }),
    ...(facts && role !== 'keeper' && { facts: facts.map((fact) => withAllowedPresses(fact, may)) }),
    ...(cautions && { cautions: onceEach(cautions) }),
  };
};
