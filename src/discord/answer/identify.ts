import {
  PermissionFlagsBits,
  type APIInteraction,
  type APIInteractionGuildMember,
  type APIUser,
} from 'discord.js';
import type { Request } from '../../contract/contract.ts';
import type { DiscordPorts, StudioId } from '../ports.ts';

export type Who = Pick<Request, 'studio' | 'member' | 'role'>;

/** Who uses the bot in which studio: the server's, or in a direct message the one that the message speaks of. */
export const identify = async (
  interaction: APIInteraction,
  spoken: StudioId | undefined,
  ports: DiscordPorts,
): Promise<Who | undefined> => {
  const { guild_id: guild, member: inGuild } = interaction;
  const user = inGuild?.user ?? interaction.user;
  if (!user) return undefined;
  // The payload has no name of the server; its id stands in for one.
  const studio = guild === undefined ? spoken : await ports.people.studioOf('discord', guild, guild);
  if (studio === undefined) return undefined;
  const member = await ports.people.memberOf(studio, 'discord', user.id, nameOf(user, inGuild));
  const keeper = managesServer(inGuild) || (await ports.isKeeper(studio, member, inGuild?.roles ?? []));
  return { studio, member, role: keeper ? 'keeper' : 'member' };
};

const nameOf = (user: APIUser, inGuild: APIInteractionGuildMember | undefined): string =>
  inGuild?.nick ?? user.global_name ?? user.username;

const MANAGERS = PermissionFlagsBits.ManageGuild | PermissionFlagsBits.Administrator;

const managesServer = (inGuild: APIInteractionGuildMember | undefined): boolean =>
  inGuild !== undefined && (BigInt(inGuild.permissions) & MANAGERS) !== 0n;
