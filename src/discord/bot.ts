import type { REST } from 'discord.js';
import type { DiscordPorts } from './ports.ts';

/** What every part of the Discord bot needs. */
export interface Bot {
  rest: REST;
  application: string;
  ports: DiscordPorts;
}
