import { remember } from './dom.ts';

const slot = 'room.recent';
const most = 3;

/** What stays the same from one time to the next, filled in while the same person is at this phone. */
export const filledIn = ['vessel', 'cup'];
const last = (option: string) => `room.last.${option}`;

/** Who is signed in, then the buckets that they named, the latest first. */
const kept = (): string[] => (remember.get(slot) ?? '').split('\n');

/** Somebody is at this phone, or nobody: what another one typed is gone. */
export const startRecent = (member = ''): void => {
  if (kept()[0] === member) return;
  for (const option of ['bucket', ...filledIn]) remember.set(last(option), undefined);
  remember.set(slot, member === '' ? undefined : member);
};

export const keepForNextTime = (typed: Record<string, string>): void => {
  for (const option of filledIn) {
    const value = typed[option];
    if (value !== undefined) remember.set(last(option), value);
  }
  const { bucket } = typed;
  const [member = '', ...buckets] = kept();
  if (bucket === undefined || member === '') return;
  remember.set(
    slot,
    [member, bucket, ...buckets.filter((one) => one !== bucket)].slice(0, most + 1).join('\n'),
  );
};

/** What an option was last time, where it may be filled in. A bucket never is: it would be answered about unasked. */
export const lastTime = (option: string): string | undefined =>
  filledIn.includes(option) ? remember.get(last(option)) : undefined;

/** What can be pressed, the buckets named lately first. */
export const recentFirst = <T extends { value: string; typed?: string }>(offered: readonly T[]): T[] => {
  const buckets = kept().slice(1);
  const place = ({ value, typed }: T): number => {
    const at = buckets.findIndex((one) => one === typed || one === value);
    return at < 0 ? buckets.length : at;
  };
  return offered.toSorted((a, b) => place(a) - place(b));
};
