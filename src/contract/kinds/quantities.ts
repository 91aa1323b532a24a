import {
  celsius,
  grams,
  gravity,
  millilitres,
  millimetres,
  seconds,
  type Celsius,
  type Grams,
  type Gravity,
  type Millilitres,
  type Millimetres,
  type Seconds,
} from '../../glaze/units.ts';
import { hours, minutes, type Duration } from '../../studio/ids.ts';
import { gravityOnScale, type GravityScale } from '../../studio/measure/stateGravity.ts';
import {
  chanceText,
  massText,
  secondsText,
  spanText,
  temperatureText,
  volumeText,
} from '../../words/text/measures.ts';
import type { Asking, Kind } from '../contract.ts';
import { asciiText } from '../../parse/readNumeral.ts';
import type { ReadQuantity } from '../../parse/measure.ts';
import {
  inUnit,
  readDuration,
  readLength,
  readMass,
  readNumber,
  readPercent,
  readRange,
  readSeconds,
  readTemperature,
  readVolume,
} from '../../parse/readQuantity.ts';
import { unitsNamed } from '../../parse/tradeUnits.ts';
import type { Window } from '../../studio/settings/bucketSettings.ts';
import { bounded } from './bounded.ts';

const units = async ({ book }: Asking) => (await book.studio()).units;

/** A weight in the glaze room; a bare number is grams. */
export const mass = (low: number, high: number, example = '246.2g'): Kind<Grams> => ({
  ...bounded(example, 'text', async (typed, asking) => readMass(typed, await units(asking), 'g'), {
    low: grams(low),
    high: grams(high),
    print: (value) => massText(value),
  }),
  units: ['g', 'kg', 'oz', 'lb'],
});

/** A volume. A bare number is millilitres where amounts are small, and litres for pails. */
export const volume = (
  low: number,
  high: number,
  bare: 'ml' | 'l',
  example = '450 ml',
): Kind<Millilitres> => ({
  ...bounded(example, 'text', async (typed, asking) => readVolume(typed, await units(asking), bare), {
    low: millilitres(low),
    high: millilitres(high),
    print: (value) => volumeText(value),
  }),
  units: bare === 'l' ? ['l', 'gal', 'ml'] : ['ml', 'l', 'tsp', 'cup'],
});

/** A length in the unit that was typed: a member who typed 200 cm should not read 1000 mm. */
const lengthIn = (typed: string, bare: 'mm' | 'cm', value: number): string => {
  const name = /[a-z"']+$/i.exec(asciiText(typed))?.[0] ?? bare;
  const size = unitsNamed(name, 'metric').find(({ dimension }) => dimension === 'length')?.size ?? 1;
  return `${Number((value / size).toFixed(1))} ${size === 1 ? 'mm' : name}`;
};

export const length = (low: number, high: number, bare: 'mm' | 'cm', example = '7cm'): Kind<Millimetres> => ({
  ...bounded(example, 'text', (typed) => readLength(typed, bare), {
    low: millimetres(low),
    high: millimetres(high),
    print: (value, _asking, typed) => lengthIn(typed, bare, value),
  }),
  units: bare === 'mm' ? ['mm', 'cm', 'in'] : ['cm', 'in', 'mm'],
});

export const time = (low: Duration, high: Duration, bare: 'min' | 'h', example = '4h'): Kind<Duration> => ({
  ...bounded(example, 'text', (typed) => readDuration(typed, bare), {
    low,
    high,
    print: (value) => spanText(value / hours(1)),
  }),
  units: bare === 'h' ? ['h', 'min', 'days'] : ['min', 'h'],
});

/** How many minutes somebody stirred. */
export const stirMinutes: Kind<number> = bounded(
  '3',
  'number',
  (typed) => inUnit(readDuration(typed, 'min'), (lasts) => lasts / minutes(1)),
  {
    low: 0.1,
    high: 180,
    print: (value) => (value < 1 ? secondsText(seconds(value * 60)) : spanText(value / 60)),
  },
);

export const temperature = (low: number, high: number): Kind<Celsius> => ({
  ...bounded(
    '18C',
    'text',
    async (typed, asking) =>
      readTemperature(typed, (await units(asking)) === 'us' && !/\d\s*°?c$/i.test(typed) ? 'F' : 'C'),
    { low: celsius(low), high: celsius(high), print: (value) => temperatureText(value, 'metric') },
  ),
  units: ['C', 'F'],
});

export const number = (low: number, high: number, example: string): Kind<number> =>
  bounded(example, 'number', readNumber, { low, high, print: String });

export const percent = (low: number, high: number, example = '50'): Kind<number> =>
  bounded(example, 'number', readPercent, { low, high, print: (value) => `${value} %` });

/** How sure to be: `95`, `95 %` or `0.95`. From one half up: what is more likely off than right is not sure at all. */
export const chance: Kind<number> = bounded(
  '95 %',
  'text',
  (typed) => inUnit(readPercent(typed), (value) => (value > 1 ? value / 100 : value)),
  { low: 0.5, high: 0.999, print: chanceText },
);

/** How long a piece or a tile is held in the glaze. */
export const dipSeconds: Kind<Seconds> = bounded('3', 'number', readSeconds, {
  low: seconds(0.2),
  high: seconds(120),
  print: (value) => secondsText(value),
});

const flowSeconds = bounded('14', 'number', readSeconds, {
  low: seconds(0.5),
  high: seconds(600),
  print: (value) => secondsText(value),
});

/** An efflux time, or `won't-run`. */
export const effluxTime: Kind<Seconds | 'wont-run'> = {
  control: 'text',
  example: '14',
  besides: [{ name: 'won’t run', value: 'won’t-run' }],
  async read(typed, asking) {
    if (/^(?:w[o0]n['’´]?t|does ?n['’]?t|will not|no)[\s-]*(?:run|flow)?$/i.test(typed.trim()))
      return { ok: true, value: 'wont-run' };
    return flowSeconds.read(typed, asking);
  },
};

const scaleTyped: readonly (readonly [RegExp, GravityScale])[] = [
  [/ ?(?:sg|g\/ml|g\/cc)$/i, 'sg'],
  [/ ?°? ?b(?:[eé]|aum[eé])$/i, 'baume'],
  [/ ?°? ?tw(?:addell)?$/i, 'twaddell'],
];

/** A gravity as read off an instrument, with the hydrometer's scale if one was typed: `1.44`, `88 Tw`, `44Be`. */
export const readOffGravity: Kind<{ value: number; scale?: GravityScale }> = {
  control: 'number',
  example: '1.44',
  read(typed, { words }) {
    const text = asciiText(typed);
    const [unit, scale] = scaleTyped.find(([ending]) => ending.test(text)) ?? [];
    const read = readNumber(unit ? text.replace(unit, '') : text);
    const on = scale === undefined ? {} : { scale };
    if (read.ok) return { ok: true, value: { value: read.value, ...on } };
    // `1,440` means 1.440: a gravity is never in the thousands.
    if (read.why.kind === 'ambiguous') return { ok: true, value: { value: read.why.or, ...on } };
    return { ok: false, why: words.option.quantity({ ...read.why, typed }, '1.44') };
  },
};

/** A gravity on any scale. The command sets the limits. */
export const statedGravity: Kind<Gravity> = {
  ...readOffGravity,
  async read(typed, asking) {
    const read = await readOffGravity.read(typed, asking);
    if (!read.ok) return read;
    const { value, scale = 'sg' } = read.value;
    const found = gravityOnScale(value, scale);
    return found.ok
      ? { ok: true, value: found.value }
      : { ok: false, why: asking.words.option.gravityOutside(typed) };
  },
};

const windowOf = <T extends number>(
  example: string,
  readEnd: (typed: string) => ReadQuantity<T>,
  least: number,
  most: number,
  unit = '',
): Kind<Window<T>> => ({
  control: 'text',
  example,
  read(typed, { words }) {
    const range = readRange(typed, readEnd);
    if (!range.ok) return { ok: false, why: words.option.quantity(range.why, example) };
    const { low, high } = range.value;
    return low < least || high > most || low === high
      ? { ok: false, why: words.option.windowOutside(typed, `${least}${unit}`, `${most}${unit}`) }
      : { ok: true, value: range.value };
  },
});

export const gravityWindow = windowOf('1.42-1.46', (typed) => inUnit(readNumber(typed), gravity), 1.02, 2.2);
/** A window of efflux times. */
export const secondsWindow = windowOf('12-16', readSeconds, 1, 600, ' s');

/** An amount by weight or by volume, whichever was typed. */
export type Amount = { mass: Grams } | { volume: Millilitres };

export const amount: Kind<Amount> = {
  control: 'text',
  example: '450 ml',
  units: ['ml', 'l', 'g', 'kg', 'tsp', 'cup'],
  async read(typed, asking) {
    const system = await units(asking);
    const { words } = asking;
    const volume = readVolume(typed, system);
    const read = volume.ok ? volume : readMass(typed, system);
    if (!read.ok) return { ok: false, why: words.option.amount((volume.ok ? read : volume).why, '450 ml') };
    const { value } = read;
    if (!(value > 0)) return { ok: false, why: words.option.notPositive(typed) };
    if (value > 200_000) return { ok: false, why: words.option.absurd(typed) };
    return { ok: true, value: volume.ok ? { volume: volume.value } : { mass: grams(value) } };
  },
};
