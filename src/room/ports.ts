import type { Chart, Command, Desk, Reply, Request } from '../contract/contract.ts';
import type { Log } from '../contract/log.ts';
import type { PeopleChange } from '../studio/logbook/ports.ts';
import type { Credentials, Post as PostOf, PostShelf as ShelfOf } from '../studio/logbook/roomPorts.ts';
import type { WireBucket } from './wire.ts';

export type { CodePurpose, Credentials, Session } from '../studio/logbook/roomPorts.ts';

export type StudioId = Request['studio'];
export type MemberId = Request['member'];
export type Instant = Request['now'];
export type Words = Parameters<Command['about']>[0];

export interface Clock {
  now(): Instant;
  /** So many milliseconds before now. */
  before(milliseconds: number): Instant;
}

export type Post = PostOf<Reply>;
export type PostShelf = ShelfOf<Reply>;

/** What the room needs of the rest of the house. */
export interface RoomPorts {
  desk: Desk;
  words: Words;
  clock: Clock;
  log: Log;
  studio: StudioId;
  studioName: string;
  /** The studio's time zone, in which times are read and shown. */
  zone(): Promise<string>;
  /** Free of passwords: the demo's own file, and no other. */
  open: boolean;
  door: Credentials;
  shelf: PostShelf;
  people: {
    /** The member of a claimed name; made when new. */
    memberOf(key: string, name: string): Promise<MemberId>;
    /** Everybody whom the studio knows, from whatever platform. */
    all(): Promise<{ id: MemberId; name: string }[]>;
    /** Tells what becomes of people; answers how to stop that. */
    follow(listener: (change: PeopleChange) => void): () => void;
    /** Who that is by now; undefined when nobody is, or they are forgotten. */
    standsFor(member: string): Promise<MemberId | undefined>;
    isKeeper(member: MemberId): Promise<boolean>;
    /** False when it would leave the studio without a keeper: then nothing is changed. */
    setKeeper(member: MemberId, keeper: boolean, by: MemberId): Promise<boolean>;
  };
  board(): Promise<WireBucket[]>;
  /** A chart as an SVG: for a phone's width, or to look into. */
  draw(chart: Chart, theme: 'light' | 'dark', size: 'small' | 'large'): Promise<string>;
}
