import type { Chart, Command, Desk, Request } from '../contract/contract.ts';
import type { Log } from '../contract/log.ts';

export type StudioId = Request['studio'];
export type MemberId = Request['member'];
export type Instant = Request['now'];
export type Words = Parameters<Command['about']>[0];

/** What Discord needs of the rest of the house. */
export interface DiscordPorts {
  desk: Desk;
  words: Words;
  clock: { now(): Instant };
  log: Log;
  /** Who a server and its people are here; each is made when it is new. */
  people: {
    studioOf(platform: 'discord', external: string, name: string): Promise<StudioId>;
    memberOf(studio: StudioId, platform: 'discord', external: string, name: string): Promise<MemberId>;
  };
  /** Whether the studio has named a member as keeper, or the holders of one of these Discord roles. */
  isKeeper(studio: StudioId, member: MemberId, roles: readonly string[]): Promise<boolean>;
  /** How a member is reached: their account, when they have one here, the studio's channel for reminders, and whether they would rather be reminded there. */
  addressOf(
    studio: StudioId,
    member: MemberId,
  ): Promise<{ user?: string; channel?: string; inChannel?: boolean }>;
  /** Lines too long for a button, kept by a short id for some weeks. */
  held: {
    hold(studio: StudioId, line: string): Promise<string>;
    held(id: string): Promise<{ studio: StudioId; line: string } | undefined>;
  };
  /** The fingerprint of the commands that were last registered in a scope. */
  registered: {
    hash(scope: string): Promise<string | undefined>;
    keep(scope: string, hash: string): Promise<void>;
  };
  /** A chart as a PNG. */
  draw(chart: Chart): Promise<Uint8Array>;
  /** The connection is lost for good: whoever made it makes another. */
  fatal(why: unknown): void;
}
