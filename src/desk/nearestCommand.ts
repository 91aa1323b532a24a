import { editDistance } from '../studio/editDistance.ts';
import type { Command } from '../contract/contract.ts';

/** The command that is closest to a misspelt one. */
export const nearestCommand = (typed: string, commands: readonly Command[]): string | undefined => {
  const said = typed.toLowerCase().replace(/^\//, '');
  const [best] = commands
    .map(({ name }) => ({ name, far: name.startsWith(said) ? 0 : editDistance(said, name) }))
    .sort((a, b) => a.far - b.far);
  return best && best.far <= Math.max(1, Math.floor(said.length / 3)) ? best.name : undefined;
};
