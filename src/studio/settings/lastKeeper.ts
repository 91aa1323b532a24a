import type { MemberId } from '../ids.ts';
import type { Studio } from './studio.ts';

/**
 * Whether a change leaves the studio without a keeper: none is named afterwards, and the person who makes it was a
 * keeper only by being named. Managers on a platform, and whoever runs the bot, are keepers without being named.
 */
export const lastKeeperGoes = (
  before: Pick<Studio, 'keepers'>,
  after: Pick<Studio, 'keepers'>,
  by: MemberId,
): boolean => after.keepers.length === 0 && before.keepers.includes(by);
