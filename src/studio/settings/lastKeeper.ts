import type { MemberId } from '../ids.ts';
import type { Studio } from './studio.ts';

/**
 * Whether a change leaves the studio without a keeper: none is named after it, and whoever makes it was one by nothing but
 * being named. A platform's own managers, and whoever runs the bot, are keepers without that.
 */
export const lastKeeperGoes = (
  before: Pick<Studio, 'keepers'>,
  after: Pick<Studio, 'keepers'>,
  by: MemberId,
): boolean => after.keepers.length === 0 && before.keepers.includes(by);
