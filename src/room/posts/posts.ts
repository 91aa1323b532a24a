import type { MemberId, Post, RoomPorts } from '../ports.ts';
import type { RecentPosts } from './recentPosts.ts';

export type PostsPorts = Pick<RoomPorts, 'postStore' | 'log' | 'words'>;

/** All posts in order: sent to listeners, and kept for those who connect later. */
export interface Posts {
  readonly recent: RecentPosts;
  /** Posts to everybody who may see it, once for each request. */
  say(said: Omit<Post, 'no'>): Promise<Post>;
  /** Resolves when what other processes have posted so far is among the recent posts. */
  caughtUp(): Promise<void>;
  /** Empties forgotten members' posts, and removes their words from others' answers. */
  erase(members: readonly MemberId[], clean: <T>(kept: T) => T): void;
  /** After a link: assigns one member's posts to the other. */
  follow(from: MemberId, into: MemberId): void;
  /** Resolves when all posts so far are in the database. */
  kept(): Promise<void>;
  stop(): void;
}

export interface Elsewhere {
  /** Something was logged, or people were renamed. */
  logged(): void;
  /** Sessions ended, or are another member's now. */
  sessions(): void;
}
