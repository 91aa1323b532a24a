import type { Resist } from '../../studio/resist/overnight.ts';
import { takeWhen } from './plainSights.ts';
import { PlainText, plainLine } from './takePlain.ts';

/** A resist coat that somebody says they put on. */
export interface PlainCoat {
  kind: Resist;
  pieces: string;
  /** When it went on, as it was typed. */
  when: string | undefined;
}

const material = '(?:(?:a |the |some )?(?:hot |melted |cold |liquid |masking )?(?:wax|latex|tape))';
const opening = String.raw`^\s*(?:(?:i|we)(?:'ve| have)? )?(?:just |already )?`;
const said = [
  new RegExp(String.raw`${opening}(?<done>(?:hot[- ])?waxed|latexed|taped(?: off)?) (?<pieces>.+)$`, 'iu'),
  new RegExp(
    String.raw`${opening}(?:(?:put|brushed|painted|dabbed)(?: on)? )?(?<done>${material}) (?:went |is |now )*on(?:to)? (?<pieces>.+)$`,
    'iu',
  ),
];
/** It tells of a fault, a plan or a doubt rather than of a coat that was put on. */
const tellsMore =
  /\?|\b(?:but|still|by mistake|by accident|where|off|again|why|how|not|never|will|when|if|wrong|too|wet|dry)\b/i;
const parts =
  /^(?:(?:the )?(?:foot|feet|bottoms?|base|bases|foot ?rings?|rims?|lids?|insides?) of )?(?:my |our |the )?/i;

/** “I waxed the foot of two mugs”: which resist, on what. */
export const readPlainCoat = (typed: string): PlainCoat | undefined => {
  const text = new PlainText(plainLine(typed.slice(0, 400)));
  const when = takeWhen(text);
  const line = text.runs().join(' ');
  const found = said.map((pattern) => pattern.exec(line)?.groups).find((groups) => groups !== undefined);
  const done = found?.['done']?.toLowerCase() ?? '';
  const pieces = (found?.['pieces'] ?? '').replace(parts, '').replace(/[\s.,!]+$/, '');
  if (done === '' || pieces === '' || pieces.length > 60 || tellsMore.test(pieces)) return undefined;
  const isHot = /hot|melted/.test(done);
  const kind = /wax/.test(done) ? (isHot ? 'hot-wax' : 'wax') : /latex/.test(done) ? 'latex' : 'tape';
  return { kind, pieces, when };
};
