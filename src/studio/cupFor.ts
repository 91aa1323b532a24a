import { flowCups } from '../glaze/flowCup.ts';
import type { StudioCup } from './studio.ts';

/** The cup that a bucket's window was set with; else the studio's only one; else one that is compared with itself alone. */
export const cupFor = (windowCup: string | undefined, cups: readonly StudioCup[]): StudioCup => {
  if (windowCup === undefined) {
    const [only, ...others] = cups;
    return only && others.length === 0 ? only : { name: 'cup', kind: 'own' };
  }
  const own = cups.find(({ name }) => name === windowCup);
  const kind = flowCups.find((cup) => cup.kind === windowCup)?.kind;
  return own ?? { name: windowCup, kind: kind ?? 'own' };
};
