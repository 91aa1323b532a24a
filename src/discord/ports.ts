import type { Chart, Command } from '../contract/contract.ts';
import type { Desk, Request } from '../contract/desk.ts';
import type { Log } from '../contract/log.ts';

export type StudioId = Request['studio'];
export type MemberId = Request['member'];
export type Instant = Request['now'];
export type Words = Parameters<Command['about']>[0];

export interface DiscordPorts {
  desk: Desk;
  words: Words;
  clock: { now(): Instant };
  log: Log;
  /** Maps servers and Discord users to studios and members; new ones are created. */
  people: {
    studioOf(platform: 'discord', external: string, name: string): Promise<StudioId>;
    memberOf(studio: StudioId, platform: 'discord', external: string, name: string): Promise<MemberId>;
  };
  /** Whether the operator lets the bot serve this server. */
  admits(server: string): Promise<boolean>;
  serverOf(studio: StudioId): Promise<string | undefined>;
  /** Whether the studio has named a member as keeper, or the holders of one of these Discord roles. */
  isKeeper(studio: StudioId, member: MemberId, roles: readonly string[]): Promise<boolean>;
  /**
   * How to reach a member: their Discord account, the studio's reminder channel, and whether they prefer to be reminded
   * there.
   */
  addressOf(
    studio: StudioId,
    member: MemberId,
  ): Promise<{ user?: string; channel?: string; inChannel?: boolean }>;
  /** The studio's channel for what is told to everybody. */
  channelOf(studio: StudioId): Promise<string | undefined>;
  /** Lines that are too long for a button's id, stored under a short id for some weeks. */
  held: {
    hold(studio: StudioId, line: string): string;
    held(id: string): Promise<{ studio: StudioId; line: string } | undefined>;
  };
  /** A hash of the commands that were last registered in a scope. */
  registered: {
    hash(scope: string): Promise<string | undefined>;
    keep(scope: string, hash: string): Promise<void>;
  };
  draw(chart: Chart): Promise<Uint8Array>;
  /** Called when the connection will not recover, so that a new one is made. */
  fatal(why: unknown): void;
}
