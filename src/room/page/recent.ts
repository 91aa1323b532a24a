import { remember } from './browser/dom.ts';

const slot = 'room.recent';
const most = 3;

/** Options that are filled in from last time, while the same member is signed in. */
export const filledIn = ['vessel', 'cup'];
const last = (option: string) => `room.last.${option}`;

/** The stored lines: who is signed in, then the buckets that they used, latest first. */
const kept = (): string[] => (remember.get(slot) ?? '').split('\n');

/** Starts a new list when another member signs in, or nobody is: the list of the one before is dropped. */
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

/** An option's last value, if it may be filled in. A bucket never is: the command might answer about the wrong one. */
export const lastTime = (option: string): string | undefined =>
  filledIn.includes(option) ? remember.get(last(option)) : undefined;

export const recentFirst = <T extends { value: string; typed?: string }>(offered: readonly T[]): T[] => {
  const buckets = kept().slice(1);
  const place = ({ value, typed }: T): number => {
    const at = buckets.findIndex((one) => one === typed || one === value);
    return at < 0 ? buckets.length : at;
  };
  return offered.toSorted((a, b) => place(a) - place(b));
};
