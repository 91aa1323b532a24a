import type { Reply } from '../contract/contract.ts';
import { refusal } from '../contract/refusal.ts';

/** A refusal that only the member sees. */
export const refuse = (title: Reply['title'], data: Reply['data']): Reply => ({
  ...refusal(title, data),
  private: true,
});
