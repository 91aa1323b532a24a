import type { Reply } from './contract.ts';

/** Nothing is done: the title says what was typed and what to do instead. */
export const refusal = (title: Reply['title'], data: Reply['data'] = {}): Reply => ({
  kind: 'refusal',
  title,
  data,
});
