import { flowCups } from '../../glaze/flow/flowCup.ts';
import type { StudioCup } from './studio.ts';

/** The cup that a bucket's window was set with; else the studio's only one; else one that is compared with itself alone. */
const windowsCup = (windowCup: string | undefined, cups: readonly StudioCup[]): StudioCup => {
  if (windowCup === undefined) {
    const [only, ...others] = cups;
    return only && others.length === 0 ? only : { name: 'cup', kind: 'own' };
  }
  const own = cups.find(({ name }) => name === windowCup);
  const kind = flowCups.find((cup) => cup.kind === windowCup)?.kind;
  return own ?? { name: windowCup, kind: kind ?? 'own' };
};

/** The cup that was timed. Who says only its standard kind means the window's cup, when it is one of that kind. */
export const cupFor = (
  said: StudioCup | undefined,
  windowCup: string | undefined,
  cups: readonly StudioCup[],
): StudioCup => {
  const usual = windowsCup(windowCup, cups);
  if (!said) return usual;
  return said.name === said.kind && said.kind === usual.kind ? usual : said;
};
