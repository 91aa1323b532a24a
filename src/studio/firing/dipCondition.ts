/** Conditions of a dip: habits, or states of the bucket, that somebody can change. */
export const bucketConditions = [
  'gravity-over',
  'gravity-under',
  'unmeasured',
  'flow-thick',
  'flow-thin',
  'rested',
  'cake',
  'lumps',
  'not-sieved',
  'on-hold',
] as const;
export const pieceConditions = [
  'layered',
  'resist-damp',
  'dust-left',
  'wetting-left',
  'texture-left',
  'underglaze-thick',
  'carved',
  'soft-bisque',
  'hard-bisque',
] as const;

export type BucketCondition = (typeof bucketConditions)[number];
export type PieceCondition = (typeof pieceConditions)[number];

/** Whether each condition held, as far as the logbook knows; unknown ones are absent. */
export type Conditions = Partial<Record<BucketCondition | PieceCondition, boolean>>;

/** A condition to compare dips by: one of those above, or a body, kiln or cone that somebody named. */
export type DipCondition =
  | { name: BucketCondition | PieceCondition }
  | { name: 'body' | 'kiln'; said: string }
  | { name: 'cone'; cone: number };

/** The condition as a key for scripts: `gravity-over`, `body:buff stoneware`, `cone:6`. */
export const conditionKey = (condition: DipCondition): string => {
  if ('said' in condition) return `${condition.name}:${condition.said}`;
  return 'cone' in condition ? `cone:${condition.cone}` : condition.name;
};

/** The conditions without those that are unknown. */
export const knownConditions = (all: Record<string, boolean | undefined>): Conditions =>
  Object.fromEntries(Object.entries(all).filter(([, is]) => is !== undefined));

const ofEach = (
  all: readonly Conditions[],
  together: (each: (boolean | undefined)[]) => boolean | undefined,
): Conditions =>
  knownConditions(
    Object.fromEntries(bucketConditions.map((name) => [name, together(all.map((one) => one[name]))])),
  );

/** True when it held for one of them, false when for none; otherwise unknown. */
export const ofAny = (all: readonly Conditions[]): Conditions =>
  ofEach(
    all,
    (each) => each.includes(true) || (each.length === 0 || each.includes(undefined) ? undefined : false),
  );

/** The conditions that did not change from the first to the last. */
export const throughout = (all: readonly Conditions[]): Conditions =>
  ofEach(all, ([first, ...rest]) => (rest.every((is) => is === first) ? first : undefined));
