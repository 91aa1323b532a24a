import {
  type APIGuildMember,
  type APIInteraction,
  type APIInteractionGuildMember,
  type APIUser,
  PermissionFlagsBits,
  Routes,
} from 'discord.js';
import type { Request } from '../../contract/desk.ts';
import type { Bot } from '../bot.ts';
import { failureOf } from '../failure.ts';
import type { StudioId } from '../ports.ts';

export type Who = Pick<Request, 'studio' | 'member' | 'role'>;

/** Why somebody cannot use the bot here, as discordWords says it. */
export type Stranger = 'serverOnly' | 'notAdmitted' | 'notOnServer';

/** The member and the studio: the server's studio, or in a direct message the studio that the message names. */
export const identify = async (
  interaction: APIInteraction,
  spoken: StudioId | undefined,
  bot: Bot,
): Promise<Who | Stranger> => {
  const { ports } = bot;
  const { guild_id: guild, member: inGuild } = interaction;
  const user = inGuild?.user ?? interaction.user;
  if (!user) return 'serverOnly';
  if (guild === undefined)
    return spoken === undefined ? 'serverOnly' : identifyInDirectMessage(spoken, user, bot);
  if (!(await ports.admits(guild))) {
    ports.log.warn({ server: guild }, 'a server used the bot that DISCORD_SERVERS does not let in');
    return 'notAdmitted';
  }
  // The payload lacks the server's name, so its id is used.
  const studio = await ports.people.studioOf('discord', guild, guild);
  const member = await ports.people.memberOf(studio, 'discord', user.id, nameOf(user, inGuild));
  const keeper = managesServer(inGuild) || (await ports.isKeeper(studio, member, inGuild?.roles ?? []));
  return { studio, member, role: keeper ? 'keeper' : 'member' };
};

/** For buttons in a direct message: they work only while their reader is still on the server. */
const identifyInDirectMessage = async (
  studio: StudioId,
  user: APIUser,
  { ports, rest }: Bot,
): Promise<Who | Stranger> => {
  const server = await ports.serverOf(studio);
  if (server === undefined || !(await ports.admits(server))) return 'notOnServer';
  try {
    // The response type that Discord documents for this route.
    const inGuild = (await rest.get(Routes.guildMember(server, user.id))) as APIGuildMember;
    const member = await ports.people.memberOf(studio, 'discord', user.id, nameOf(user, inGuild));
    const keeper = await ports.isKeeper(studio, member, inGuild.roles);
    return { studio, member, role: keeper ? 'keeper' : 'member' };
  } catch (error) {
    const failure = failureOf(error);
    if (failure === 'no-member' || failure === 'no-channel' || failure === 'no-permission')
      return 'notOnServer';
    throw error;
  }
};

const nameOf = (user: APIUser, inGuild: Pick<APIGuildMember, 'nick'> | undefined): string =>
  inGuild?.nick ?? user.global_name ?? user.username;

const MANAGERS = PermissionFlagsBits.ManageGuild | PermissionFlagsBits.Administrator;

const managesServer = (inGuild: APIInteractionGuildMember | undefined): boolean =>
  inGuild !== undefined && (BigInt(inGuild.permissions) & MANAGERS) !== 0n;
