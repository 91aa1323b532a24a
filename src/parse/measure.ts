import { definedOnly } from '../definedOnly.ts';
import type { Dimension, QuantityProblem } from './quantityProblem.ts';
import type { UnitSystem } from '../studio/settings/studio.ts';
import { numeralPattern, asciiText, readNumeral, type Numeral } from './readNumeral.ts';
import { nearestUnit, unitsNamed, type TradeUnit } from './tradeUnits.ts';

export type ReadQuantity<T> = { ok: true; value: T } | { ok: false; why: QuantityProblem };

const WORDED: readonly (readonly [RegExp, string])[] = [
  [/^(?:an? )?half (?:of )?(?:an? )?/i, '1/2 '],
  [/^(?:an? )?quarter (?:of )?(?:an? )?/i, '1/4 '],
  [/^(?:an?|one) /i, '1 '],
  [/^two /i, '2 '],
  [/^three /i, '3 '],
  [/^(\d+) and a half /i, '$1 1/2 '],
  [/\bcm\^?3\b/gi, 'cc'],
];

const PART = new RegExp(
  String.raw` ?(?:(?:and\b|[,+&]) ?)?(${numeralPattern}) ?(\D*?)(?= ?(?:(?:and|[,+&]) ?)?(?:(?<= )\.)?\d|$)`,
  'giy',
);

interface Part {
  numeral: Numeral;
  name: string;
}

/** Splits `2 lb 3 oz` into numbers and unit names; undefined if some text remains. */
const partsOf = (text: string): Part[] | undefined => {
  const parts: Part[] = [];
  let length = 0;
  for (const [whole, digits = '', name = ''] of text.matchAll(PART)) {
    const numeral = readNumeral(digits);
    if (!numeral) return undefined;
    parts.push({ numeral, name: name.trim() });
    length += whole.length;
  }
  return length === text.length ? parts : undefined;
};

/** Marks that name no unit: the full stop of `350.`, the degree sign of `18°`. */
const isUnsaid = (name: string): boolean => /^(?:\.|°|deg|degrees?)?$/i.test(name);

/** The unit of a bare number after another: minutes after hours (`1h30`), seconds after minutes (`5 min 30`). */
const impliedAfter = ({ dimension, size, zero }: TradeUnit): TradeUnit | undefined =>
  dimension === 'duration' && (size === 3600 || size === 60)
    ? { dimension, size: size / 60, zero }
    : undefined;

interface Wanted {
  dimension: Dimension;
  system: UnitSystem;
  /** The unit of a bare number. */
  bare: string | undefined;
}

const unitOf = (
  name: string,
  { dimension, system, bare }: Wanted,
  before?: TradeUnit,
): ReadQuantity<TradeUnit> => {
  const refused = (why: QuantityProblem) => ({ ok: false, why }) as const;
  const noUnit = { kind: 'no-unit', wanted: dimension, typed: name } as const;
  if (isUnsaid(name) && before) {
    const implied = impliedAfter(before);
    return implied ? { ok: true, value: implied } : refused(noUnit);
  }
  const said = isUnsaid(name) ? bare : name;
  if (said === undefined) return refused(noUnit);
  const named = unitsNamed(said, system);
  const unit = named.find((one) => one.dimension === dimension);
  if (unit) return { ok: true, value: unit };
  const [other] = named;
  const about = { unit: said, wanted: dimension, typed: name };
  if (other) return refused({ kind: 'wrong-dimension', is: other.dimension, ...about });
  const near = nearestUnit(said, dimension, system);
  return refused({ kind: 'unknown-unit', ...about, ...definedOnly({ near }) });
};

/** Parses a quantity into grams, millilitres, millimetres, seconds or degrees Celsius. */
export const measure = (typed: string, wanted: Wanted): ReadQuantity<number> => {
  const refused = (why: QuantityProblem) => ({ ok: false, why: { ...why, typed } }) as const;
  const notANumber = refused({ kind: 'not-a-number', typed });
  const isTemperature = wanted.dimension === 'temperature';

  const text = WORDED.reduce((plain, [words, figures]) => plain.replace(words, figures), asciiText(typed));
  if (text === '') return refused({ kind: 'empty', typed });
  const sign = /^[+-] ?/.exec(text)?.[0] ?? '';
  const parts = partsOf(text.slice(sign.length));
  if (!parts || (isTemperature && parts.length > 1)) return notANumber;
  const isNegative = sign.startsWith('-');
  if (isNegative && !isTemperature) return refused({ kind: 'negative', typed });

  let total = 0;
  let before: TradeUnit | undefined;
  for (const { numeral, name } of parts) {
    const unit = unitOf(name, wanted, before);
    if (!unit.ok) return refused(unit.why);
    const { size, zero } = unit.value;
    if (before && size >= before.size) return notANumber;
    // `1,500 g` is 1500 g, since nobody weighs thousandths of a gram. `1,500 kg` is ambiguous.
    if (numeral.kind === 'ambiguous' && size > 1)
      return refused({
        kind: 'ambiguous',
        either: numeral.grouped * size,
        or: numeral.decimal * size,
        typed,
      });
    const number = numeral.kind === 'ambiguous' ? numeral.grouped : numeral.value;
    total += ((isNegative ? -number : number) - zero) * size;
    before = unit.value;
  }
  return Math.abs(total) <= Number.MAX_SAFE_INTEGER ? { ok: true, value: total } : notANumber;
};
