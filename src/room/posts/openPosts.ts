import { OwnPosts } from './ownPosts.ts';
import type { Elsewhere, Posts, PostsPorts } from './posts.ts';
import { SharedPosts } from './sharedPosts.ts';

export const openPosts = (ports: PostsPorts, elsewhere: Elsewhere): Promise<Posts> =>
  ports.postStore.isShared ? SharedPosts.open(ports, elsewhere) : OwnPosts.open(ports);
