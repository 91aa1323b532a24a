import { edits } from '../studio/edits.ts';
import type { Command } from '../contract/contract.ts';

/** The command that a misspelt one was most likely meant for. */
export const nearestCommand = (typed: string, commands: readonly Command[]): string | undefined => {
  const said = typed.toLowerCase().replace(/^\//, '');
  const [best] = commands
    .map(({ name }) => ({ name, far: name.startsWith(said) ? 0 : edits(said, name) }))
    .sort((a, b) => a.far - b.far);
  return best && best.far <= Math.max(1, Math.floor(said.length / 3)) ? best.name : undefined;
};
