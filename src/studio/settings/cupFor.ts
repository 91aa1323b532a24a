import { flowCups } from '../../glaze/flow/flowCup.ts';
import type { StudioCup } from './studio.ts';

/** A cup that nobody has named. */
export const unnamedCup = 'cup';

/** The cup that a bucket's window was set with, or the studio's only cup; else one whose times compare with no other's. */
const windowsCup = (windowCup: string | undefined, cups: readonly StudioCup[]): StudioCup => {
  if (windowCup === undefined) {
    const [only, ...others] = cups;
    return only && others.length === 0 ? only : { name: unnamedCup, kind: 'own' };
  }
  const own = cups.find(({ name }) => name === windowCup);
  const kind = flowCups.find((cup) => cup.kind === windowCup)?.kind;
  return own ?? { name: windowCup, kind: kind ?? 'own' };
};

/** The cup that was timed. A standard kind alone means the window's cup, if it is of that kind. */
export const cupFor = (
  said: StudioCup | undefined,
  windowCup: string | undefined,
  cups: readonly StudioCup[],
): StudioCup => {
  const usual = windowsCup(windowCup, cups);
  if (!said) return usual;
  return said.name === said.kind && said.kind === usual.kind ? usual : said;
};
