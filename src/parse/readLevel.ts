import { inUnit, readLength, readPercent, readVolume } from './readQuantity.ts';
import { asciiText } from './readNumeral.ts';
import type { ReadQuantity } from './measure.ts';
import type { Millilitres, Millimetres } from '../glaze/units.ts';
import type { UnitSystem } from '../studio/settings/studio.ts';

/** How full a pail is: as a part of it, as a volume, or by the gap from rim to glaze. */
export type Level =
  { by: 'part'; part: number } | { by: 'volume'; volume: Millilitres } | { by: 'gap'; gap: Millimetres };

const counts = new Map(Object.entries({ a: 1, an: 1, one: 1, two: 2, three: 3, four: 4 }));
const parts = new Map(Object.entries({ half: 2, third: 3, quarter: 4, fourth: 4, fifth: 5 }));

/** “two thirds”, “a quarter”, “half”, “3/4”, “full”. */
const partNamed = (text: string): number | undefined => {
  if (/^(?:full|brim[- ]?full|to the brim)$/.test(text)) return 1;
  if (text === 'empty') return 0;
  const named = /^(?:([a-z]+)[ -])?([a-z]+?)s?$/.exec(text.replace(/^half$/, 'a half'));
  const [count, of] = [counts.get(named?.[1] ?? 'a'), parts.get(named?.[2] ?? '')];
  if (count !== undefined && of !== undefined) return count / of;
  const fraction = /^(\d+) ?\/ ?(0*[1-9]\d*)$/.exec(text);
  return fraction ? Number(fraction[1]) / Number(fraction[2]) : undefined;
};

const lengthEnding = /(?:mm|cm|inch(?:es)?|in|")$/;
const percentEnding = /(?:%|percent|per cent)$/;

/** Reads how full a pail is; a bare number is litres, or gallons where the studio counts so. */
export const readLevel = (typed: string, units: UnitSystem): ReadQuantity<Level> => {
  const text = asciiText(typed)
    .trim()
    .toLowerCase()
    .replace(/^(?:about|nearly|almost|roughly) /, '')
    .replace(/(?<=.) (?:full|down|deep|below the rim|from the rim)$/, '');
  const part = partNamed(text);
  if (part !== undefined) return { ok: true, value: { by: 'part', part } };
  if (percentEnding.test(text))
    return inUnit(readPercent(text), (percent) => ({ by: 'part', part: percent / 100 }));
  if (lengthEnding.test(text)) return inUnit(readLength(text, 'cm'), (gap) => ({ by: 'gap', gap }));
  return inUnit(readVolume(text, units, 'l'), (volume) => ({ by: 'volume', volume }));
};
