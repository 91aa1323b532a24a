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

/** True when it held for one of them, false when for none; otherwise unknown. */
export const ofAny = (all: readonly Conditions[]): Conditions =>
  knownConditions(
    Object.fromEntries(
      bucketConditions.map((name) => {
        const each = all.map((one) => one[name]);
        const so = each.includes(true) ? true : each.includes(undefined) ? undefined : false;
        return [name, all.length === 0 ? undefined : so];
      }),
    ),
  );

/** The conditions that held throughout; those that changed are left out. */
export const throughout = ([first, ...rest]: readonly Conditions[]): Conditions =>
  knownConditions(
    Object.fromEntries(
      bucketConditions.map((name) => [
        name,
        rest.every((one) => one[name] === first?.[name]) ? first?.[name] : undefined,
      ]),
    ),
  );
