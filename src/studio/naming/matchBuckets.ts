import { editDistance } from '../editDistance.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { normalizedName } from '../../text/normalizedName.ts';

/** A bucket with its names normalised. */
export interface NormalizedBucket {
  state: BucketState;
  name: string;
  nick: string | undefined;
}

export const calledBy = (state: BucketState): NormalizedBucket => {
  const { name, nick } = state.settings;
  return { state, name: normalizedName(name), nick: nick === undefined ? undefined : normalizedName(nick) };
};

/** The first of these ways that finds a bucket; buckets in use come before retired ones. */
export const firstOf = (
  all: readonly NormalizedBucket[],
  ...fits: ((one: NormalizedBucket) => boolean)[]
): BucketState[] => {
  for (const group of [all.filter(({ state }) => !state.retired), all])
    for (const fit of fits) {
      const found = group.filter(fit);
      if (found.length > 0) return found.map(({ state }) => state);
    }
  return [];
};

/** Buckets by number, nickname or whole name; else every name that begins with the text; else every one that contains it. */
export const matchBuckets = (typed: string, all: readonly BucketState[]): BucketState[] => {
  const name = normalizedName(typed);
  if (name === '') return [];
  const number = /^(?:no|nr|bucket)?\s*(\d{1,9})$/.exec(name)?.[1];
  if (number !== undefined) {
    const numbered = all.filter(({ no }) => no === Number(number));
    if (numbered.length > 0) return numbered;
  }
  return firstOf(
    all.map(calledBy),
    (one) => one.nick === name,
    (one) => one.name === name,
    (one) => one.name.startsWith(name),
    (one) => ` ${one.name}`.includes(` ${name}`),
    (one) => one.name.replaceAll(' ', '') === name.replaceAll(' ', ''),
  );
};

/** The bucket whose whole name, nickname or number the text begins with; the longest wins. */
export const beginsWithBucket = (
  typed: string,
  all: readonly BucketState[],
): { known: string; rest: string } | undefined => {
  const words = typed.trim().split(/\s+/);
  const names = new Set(
    all.flatMap(({ no, settings: { name, nick } }) => [
      String(no),
      normalizedName(name),
      normalizedName(nick ?? ''),
    ]),
  );
  names.delete('');
  for (let i = words.length - 1; i > 0; i--) {
    const known = words.slice(0, i).join(' ');
    if (names.has(normalizedName(known))) return { known, rest: words.slice(i).join(' ') };
  }
  return undefined;
};

/** How far what was typed is from a bucket's names: 0 for a match or a beginning, plus one for each wrong letter. */
const distance = (typed: string, { state, name, nick = '' }: NormalizedBucket): number => {
  if (typed === '' || typed === nick || typed === String(state.no)) return 0;
  if (name.startsWith(typed)) return 0.1;
  if (` ${name}`.includes(` ${typed}`)) return 0.2;
  if (name.includes(typed)) return 0.4;
  const parts = [name, ...name.split(' '), nick].filter((part) => part !== '');
  return Math.min(
    ...parts.map((part) =>
      Math.min(editDistance(typed, part), editDistance(typed, part.slice(0, typed.length)) + 0.3),
    ),
  );
};

/** Buckets ordered by how near their names are to what was typed. Far ones are left out, retired ones come last. */
export const nearestBuckets = (typed: string, all: readonly BucketState[]): BucketState[] => {
  const name = normalizedName(typed);
  const most = Math.max(1, Math.floor(name.length / 3));
  return all
    .map((state) => ({ state, far: distance(name, calledBy(state)) }))
    .filter(({ far }) => far <= most + 0.3)
    .sort(
      (a, b) => Number(a.state.retired) - Number(b.state.retired) || a.far - b.far || a.state.no - b.state.no,
    )
    .map(({ state }) => state);
};
