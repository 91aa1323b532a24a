import { definedOnly } from '../../definedOnly.ts';
import { PlainText, plainLine } from './takePlain.ts';

/** A command that a line in plain words surely means, with the options that it gives. */
export interface PlainWish {
  path: readonly [string, ...string[]];
  typed: Readonly<Record<string, string>>;
  /** `run` it; open its `form`, which asks for the rest; or `log` what it says, by a press. */
  by: 'run' | 'form' | 'log';
}

const span = String.raw`(?:\d+(?:[.,]\d+)? ?(?:m|mins?|minutes?|h|hrs?|hours?)|half an hour|an hour)`;
const toLook = String.raw`(?:to (?:look at|look in on|check(?: on)?|stir|measure|weigh|dip in) |about |of |for )(?:the )?`;
const came = String.raw`(?:\s*[:,;]\s*|\s+-+\s+|\s+(?:and )?(?:it )?(?:came out(?: with)?|was|with)\s+)`;

const wishes: readonly (readonly [RegExp, PlainWish['path'], PlainWish['by']])[] = [
  [
    /^(?:please )?undo(?: (?:that|it|this|(?:the |my )?last(?: (?:one|entry|reading|stir))?|my entry))?$/i,
    ['undo'],
    'run',
  ],
  [/^take (?:that|it|this|(?:the |my )?last(?: (?:one|entry))?) back$/i, ['undo'], 'run'],
  [
    /^(?:(?:oops|sorry|no|sorry no)[,!.]* )?(?:(?:that|it) was |i (?:logged|used|took|had|chose)(?: that| it)?(?: (?:in|to|for))? )?(?:in )?(?:the |a )?wrong bucket$/i,
    ['undo'],
    'run',
  ],
  [/^(?:(?:list|show|show me) )?(?:my |the )coats$/i, ['coat', 'list'], 'run'],
  [/^are (?:my|the) coats (?:dry|ready)(?: yet)?$/i, ['coat', 'list'], 'run'],
  [
    /^(?:what(?:'s| is)?(?: there)?(?: left)? to do|what needs (?:doing|to be done)|to-?do(?: list)?|what (?:should|can) i do)(?: here)?(?: now| next| today)?$/i,
    ['round'],
    'run',
  ],
  [
    /^(?:(?:plan|mix|make|start|weigh out)(?: up)? )?(?:me )?(?:a |another )?(?:new |fresh )?batch(?: of glaze)?$/i,
    ['batch', 'plan'],
    'form',
  ],
  [new RegExp(`^remind me in (?<in>${span}) ${toLook}(?<bucket>.+)$`, 'i'), ['remind', 'me'], 'run'],
  [new RegExp(`^remind me ${toLook}(?<bucket>.+) in (?<in>${span})$`, 'i'), ['remind', 'me'], 'run'],
  [/^(?:(?:the )?next )?dose (?:for|of|in|to) (?:the )?(?<bucket>.+)$/i, ['dose'], 'run'],
  [
    new RegExp(
      String.raw`^(?:plan|make|mix)(?: up)? (?:me )?(?<volume>\d+(?:[.,]\d+)? ?(?:l|litres?|liters?|gal|gallons?)) of (?:glaze|(?:a )?new (?:batch|glaze)|a batch)$`,
      'i',
    ),
    ['batch', 'plan'],
    'form',
  ],
  [
    /^(?:the )?(?<bucket>.+?) (?:fired|came out(?: of the (?:kiln|firing))?)(?: really| very)? (?<result>good|fine|ok|well|great|perfect)$/i,
    ['fired'],
    'log',
  ],
  [new RegExp(`^(?:i |we )?fired (?:the )?(?<bucket>.+?)${came}(?<result>.+)$`, 'i'), ['fired'], 'log'],
];

/** As long as such a line may be. */
const longest = 200;

/** What a line without a slash wishes for, where it is no reading, no question and no command. */
export const plainWish = (typed: string): PlainWish | undefined => {
  if (typed.length > longest) return undefined;
  const [line = '', ...others] = new PlainText(plainLine(typed)).runs();
  const said = line.replace(/[\s.!?]+$/, '');
  if (others.length > 0) return undefined;
  for (const [pattern, path, by] of wishes) {
    const found = pattern.exec(said);
    if (!found) continue;
    const { in: after, result, ...rest } = found.groups ?? {};
    const time = after?.replace(/^half an hour$/i, '30 min').replace(/^an hour$/i, '1 h');
    const outcome = result?.replace(/^(?:well|great|perfect)$/i, 'good');
    return { path, typed: definedOnly({ ...rest, result: outcome, in: time }), by };
  }
  return undefined;
};
