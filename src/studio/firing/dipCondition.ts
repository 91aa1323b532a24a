/** What a dip may have been like, each a habit or a state of the bucket that somebody can change. */
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

/** Whether it was so, as far as the logbook knows: what nobody can tell is absent. */
export type Conditions = Partial<Record<BucketCondition | PieceCondition, boolean>>;

/** One condition that dips are compared by: those above, and each body, kiln and cone that somebody named. */
export type DipCondition =
  | { name: BucketCondition | PieceCondition }
  | { name: 'body' | 'kiln'; said: string }
  | { name: 'cone'; cone: number };

/** As scripts see it: `gravity-over`, `body:buff stoneware`, `cone:6`. */
export const conditionKey = (condition: DipCondition): string => {
  if ('said' in condition) return `${condition.name}:${condition.said}`;
  return 'cone' in condition ? `cone:${condition.cone}` : condition.name;
};

/** Conditions as far as they are known, those that nobody can tell left out. */
export const knownConditions = (all: Record<string, boolean | undefined>): Conditions =>
  Object.fromEntries(Object.entries(all).filter(([, is]) => is !== undefined));

/** So when it was so of one of them; not so when it was so of none; otherwise nobody can tell. */
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

/** What held all the while; what changed meanwhile is left out. */
export const throughout = ([first, ...rest]: readonly Conditions[]): Conditions =>
  knownConditions(
    Object.fromEntries(
      bucketConditions.map((name) => [
        name,
        rest.every((one) => one[name] === first?.[name]) ? first?.[name] : undefined,
      ]),
    ),
  );
