import type { Chart, Command, Reply } from '../contract/contract.ts';
import type { Desk, Request } from '../contract/desk.ts';
import type { Log } from '../contract/log.ts';
import type { PeopleChange } from '../studio/logbook/ports.ts';
import type { Credentials, Post as PostOf, PostStore as StoreOf } from '../studio/logbook/roomPorts.ts';
import type { WireBucket, WireNotebook } from './wire.ts';

export type { CodePurpose, Credentials, Session } from '../studio/logbook/roomPorts.ts';

export type StudioId = Request['studio'];
export type MemberId = Request['member'];
export type Instant = Request['now'];
export type Words = Parameters<Command['about']>[0];

export interface Clock {
  now(): Instant;
  /** An instant, so many milliseconds before now. */
  before(milliseconds: number): Instant;
}

export type BucketNames = ReadonlyMap<number, string>;

export type Post = PostOf<Reply>;
export type PostStore = StoreOf<Reply>;

/** What the studio has been told about itself. */
export interface SetUp {
  name: string;
  /** The zone that times are read and shown in: UTC until one is set. */
  zone: string;
  zoneSet: boolean;
  cups: number;
}

/** An old notebook as a keeper sends it, and how it is to be read. */
export interface NotebookSent {
  bytes: Uint8Array;
  said: {
    columns: ReadonlyMap<string, string>;
    dates?: 'd/m/y' | 'm/d/y';
    decimal?: ',' | '.';
    bucket?: string;
    newBuckets: boolean;
  };
  /** Otherwise it is only tried. */
  keep: boolean;
}

export interface NotebookPort {
  /** `as` is the keeper's name. */
  read(sent: NotebookSent, by: MemberId, as: string): Promise<WireNotebook>;
  /** Takes everything of one notebook back. */
  takeBack(no: number, by: MemberId): Promise<WireNotebook>;
}

export interface RoomPorts {
  desk: Desk;
  words: Words;
  clock: Clock;
  log: Log;
  /** Called with the status of each request that is refused. */
  refused?(status: number): void;
  studio: StudioId;
  setUp(): Promise<SetUp>;
  /** No passwords: for the demo's own file only. */
  open: boolean;
  credentials: Credentials;
  postStore: PostStore;
  people: {
    /** The member with a claimed name; created if new. */
    memberOf(key: string, name: string): Promise<MemberId>;
    all(): Promise<{ id: MemberId; name: string }[]>;
    /** Reports links and erasures; returns a function that unsubscribes. */
    follow(listener: (change: PeopleChange) => void): () => void;
    /** The member that this id stands for now; undefined if unknown or forgotten. */
    standsFor(member: string): Promise<MemberId | undefined>;
    isKeeper(member: MemberId): Promise<boolean>;
    /** False if the studio would be left without a keeper: then nothing changes. */
    setKeeper(member: MemberId, keeper: boolean, by: MemberId): Promise<boolean>;
  };
  board(): Promise<WireBucket[]>;
  bucketNames(): Promise<BucketNames>;
  notebook: NotebookPort;
  /** A chart as SVG, small for the stream or large to look at closely; the large one can be pinned by its margin. */
  draw(chart: Chart, theme: 'light' | 'dark', size: 'small' | 'large'): Promise<string>;
}
