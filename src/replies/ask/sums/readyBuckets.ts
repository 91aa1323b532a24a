import { pressToRun } from '../../../contract/replyParts.ts';
import { bucketFigures, bucketRow, judgedBuckets, nameOf, whatItNeeds } from './bucketRow.ts';
import type { Sum } from './sumAsked.ts';

/** One of these words asks for buckets, and one of those whether they can be used. */
const asksWhich =
  /\b(?:which|what|any|anything|whats|list|show|how many|all|are there)\b(?: \w+)?(?: (?:bucket|buckets|ones?|glaze|of them))?\b/;
const ready = /\bready\b|\b(?:good|ok|okay|fit|safe|fine) to (?:go|use|dip|glaze)\b|\bin (?:good )?shape\b/;
/** “Which can I use now”, but not “which can I use on mugs”. */
const canUse =
  /\b(?:which|what)(?: (?:bucket|buckets|ones?|glaze))? (?:can|could|may|should) (?:i|we) (?:use|dip(?: in| into)?|glaze with)(?: (?:now|today|tonight|right now|this (?:morning|evening|afternoon)))?\W*$/;
/** Ready for what is not of the logbook: “ready to fire”, “when is my mug ready”. */
const elsewhere =
  /\b(?:fire|fired|firing|kiln|unload|wax|latex|coat|mugs?|pots?|bowls?|pieces?|tiles?|food|kids|children|collect|when|how)\b/;

export const readyBuckets: Sum = async ({ heard, named }, asking) => {
  if (named.length > 0) return undefined;
  const asked =
    canUse.test(heard) ||
    (ready.test(heard) && asksWhich.test(heard) && !elsewhere.test(heard.replace('how many', '')));
  if (!asked) return undefined;
  const all = await judgedBuckets(asking);
  const usable = all.filter(({ verdict }) => verdict.step === 'use');
  return {
    kind: 'answer',
    title: asking.words.sum.ready(usable.map(nameOf), all.length),
    facts: await Promise.all(usable.slice(0, 3).map((one) => bucketRow(one, asking))),
    actions: [
      ...usable.slice(0, 2).map((one) => whatItNeeds(one, asking)),
      pressToRun(asking.words.ask.action('bucket-list'), 'bucket list'),
    ],
    data: { sum: 'ready', ready: usable.map(bucketFigures), buckets: all.length },
  };
};
