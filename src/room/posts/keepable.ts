import type { Reply } from '../../contract/contract.ts';
import type { Words } from '../ports.ts';

/** Stands for a reply that is gone: one that is shown once, or a forgotten member's. */
export const insteadOf = ({ kind }: Reply, words: Words): Reply => ({
  kind,
  title: words.desk.shownOnce,
  private: true,
  data: {},
});

/** What is stored of a post: without its reply, if that is shown once. */
export const keepable = <T extends { reply: Reply }>(post: T, words: Words): T =>
  post.reply.fleeting ? { ...post, reply: insteadOf(post.reply, words) } : post;
