import type { Reply } from '../../contract/contract.ts';
import type { Post } from '../ports.ts';
import type { PostsPorts } from './posts.ts';

/** What is stored of a post: without its reply, if that is shown once. */
export const keepableIn = ({ words }: Pick<PostsPorts, 'words'>) => {
  const instead = (kind: Reply['kind']): Reply => ({
    kind,
    title: words.desk.shownOnce,
    private: true,
    data: {},
  });
  return {
    keepable: <T extends { reply: Reply }>(post: T): T => {
      const { kind, fleeting } = post.reply;
      return fleeting ? { ...post, reply: instead(kind) } : post;
    },
    emptied: (post: Post): Post => ({ ...post, line: '', private: true, reply: instead(post.reply.kind) }),
  };
};
