import type { BucketUse } from '../../studio/settings/bucketSettings.ts';

/** What a question about one bucket asks of its card. */
export type BucketQuestion =
  { of: 'firing' } | { of: 'bodies' } | { of: 'recipe' } | { of: 'use'; use: Exclude<BucketUse, 'test'> };

/** “Why did it run at cone 6?” asks about a fault: only what is asked like a setting is one. */
const asksASetting =
  /^\W*(?:what|which|whats|is|are|does|do|can|could|may|should|how hot|at what|to what|for what)\b/i;

const uses: readonly [Exclude<BucketUse, 'test'>, RegExp][] = [
  ['spraying', /\b(?:spray(?:ed|ing)?|airbrush(?:ed|ing)?)\b/i],
  ['brushing', /\b(?:brush(?:ed|ing)?|paint(?:ed)?)\b/i],
  ['dipping', /\b(?:dip(?:ped|ping)?|dunk)\b/i],
];
const asksWhether = /^\W*(?:can|could|may|should|is|are)\b/i;
const firing =
  /\bcones?\b|\boxidation\b|\breduction\b|\batmosphere\b|\bhow hot\b|\bwhat temp|\bfires?\b.*\b(?:to|at|in)\b/i;
const bodies =
  /\bcla(?:y|ys|y bod(?:y|ies))\b.*\b(?:for|on|go|goes|fit|fits|suit|suits|use|work|works|with)\b|\b(?:on|for|with|suit|fit)\b.*\b(?:porcelain|stoneware|earthenware|terracotta)\b|\bclay bod(?:y|ies)\b/i;
const recipe =
  /\brecipe\b|\bingredients\b|\bmade (?:of|from)\b|\b(?:what is|whats|what['’]s) in (?:it|bucket)\b/i;

/** Words of other questions, which the handbook answers. */
const elsewhere =
  /\b(?:bisque|wax|latex|layer|over|on top|double|how (?:long|many|thick|do|should)|why|foot|dry|test tile|safe|food|mask|streak|drip|crawl\w*|run|ran|pinhol\w*)\b/i;

/** Which of a bucket's settings is asked about, its name left out of the question; undefined if none is. */
export const bucketQuestion = (question: string): BucketQuestion | undefined => {
  if (!asksASetting.test(question) || elsewhere.test(question)) return undefined;
  if (firing.test(question)) return { of: 'firing' };
  if (bodies.test(question)) return { of: 'bodies' };
  if (recipe.test(question)) return { of: 'recipe' };
  const use = asksWhether.test(question) ? uses.find(([, said]) => said.test(question))?.[0] : undefined;
  return use && { of: 'use', use };
};
