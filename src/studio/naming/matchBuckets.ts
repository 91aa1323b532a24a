import { editDistance } from '../editDistance.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { normalizedName } from '../../text/normalizedName.ts';

/** Buckets by number, nickname or whole name; else every name that begins with the text; else every one that contains it. */
export const matchBuckets = (typed: string, all: readonly BucketState[]): BucketState[] => {
  const name = normalizedName(typed);
  if (name === '') return [];
  const number = /^(?:no|nr|bucket)?\s*(\d{1,9})$/.exec(name)?.[1];
  if (number !== undefined) {
    const numbered = all.filter(({ no }) => no === Number(number));
    if (numbered.length > 0) return numbered;
  }
  const inUse = all.filter(({ retired }) => !retired);
  for (const group of [inUse, all]) {
    const fits = [
      ({ settings: { nick } }: BucketState) => nick !== undefined && normalizedName(nick) === name,
      ({ settings }: BucketState) => normalizedName(settings.name) === name,
      ({ settings }: BucketState) => normalizedName(settings.name).startsWith(name),
      ({ settings }: BucketState) => ` ${normalizedName(settings.name)}`.includes(` ${name}`),
      ({ settings }: BucketState) =>
        normalizedName(settings.name).replaceAll(' ', '') === name.replaceAll(' ', ''),
    ];
    for (const fit of fits) {
      const found = group.filter(fit);
      if (found.length > 0) return found;
    }
  }
  return [];
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
const distance = (typed: string, { no, settings }: BucketState): number => {
  const name = normalizedName(settings.name);
  const nick = normalizedName(settings.nick ?? '');
  if (typed === '' || typed === nick || typed === String(no)) return 0;
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
    .map((state) => ({ state, far: distance(name, state) }))
    .filter(({ far }) => far <= most + 0.3)
    .sort(
      (a, b) => Number(a.state.retired) - Number(b.state.retired) || a.far - b.far || a.state.no - b.state.no,
    )
    .map(({ state }) => state);
};
