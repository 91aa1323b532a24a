import type { MemberId } from '../ids.ts';
import type { Studio } from './studio.ts';

/** Who gets the keepers' reminders: the named keepers, or else whoever last changed the studio's settings. */
export const keepersOf = ({ keepers, setBy }: Pick<Studio, 'keepers' | 'setBy'>): MemberId[] => {
  if (keepers.length > 0) return keepers;
  return setBy === undefined ? [] : [setBy];
};
