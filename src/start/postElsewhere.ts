import type { Desk } from '../contract/desk.ts';
import type { Log } from '../contract/log.ts';
import { keepable } from '../room/posts/keepable.ts';
import type { Post } from '../room/ports.ts';
import { postingDesk } from '../room/server/postingDesk.ts';
import type { App } from './app.ts';

/** The desk of a process without the studio's room: what is logged is posted there by the database, where processes share one. */
export const postElsewhere = (
  { desk, store, words }: Pick<App, 'desk' | 'store' | 'words'>,
  log: Log,
): Desk =>
  postingDesk(desk, log, async (studio, said) => {
    const { door, posts } = store.room<Post['reply']>(studio);
    // Where nobody has come in, there is no room to post in.
    if (posts.isShared && (await door.claims()).length > 0) await posts.add(keepable(said, words));
  });
