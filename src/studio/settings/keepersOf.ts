import type { MemberId } from '../ids.ts';
import type { Studio } from './studio.ts';

/** Whom a keeper's reminder goes to: the keepers that are named, or else whoever last set the studio up. */
export const keepersOf = ({ keepers, setBy }: Pick<Studio, 'keepers' | 'setBy'>): MemberId[] => {
  if (keepers.length > 0) return keepers;
  return setBy === undefined ? [] : [setBy];
};
