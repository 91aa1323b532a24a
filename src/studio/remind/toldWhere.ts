import type { MemberId } from '../ids.ts';
import type { Studio } from '../settings/studio.ts';

/** Where a member's reminders come: where they read this, in a direct message, or in the studio's channel. */
export type ToldWhere = 'here' | 'direct' | 'channel';

/** A message on a phone is seen sooner than one in the room, so that Discord comes first. */
export const toldWhere = (
  member: MemberId,
  { inChannel, channel }: Pick<Studio, 'inChannel' | 'channel'>,
  platforms: readonly string[],
): ToldWhere => {
  if (!platforms.includes('discord')) return 'here';
  return channel !== undefined && inChannel.includes(member) ? 'channel' : 'direct';
};
