import type { Reason } from '../../studio/verdict/verdict.ts';
import { said, t, type Text } from '../text/text.ts';

/** What sort of trouble, and why, said once when they are the same word. */
export const heldWhy = (
  { cause, why }: Extract<Reason, { because: 'held' }>['hold'],
  sort: (cause: string) => string,
): Text => {
  const plain = why.replace(/[.\s]+$/, '');
  if (cause === 'other') return t`: ${said(plain)}`;
  return plain.trim().toLowerCase() === cause ? [sort(cause)] : t`${[sort(cause)]}: ${said(plain)}`;
};
