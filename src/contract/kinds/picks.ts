import { flowLooks, observations, type Observation } from '../../studio/bucket/bucketEvent.ts';
import { editDistance } from '../../studio/editDistance.ts';
import type { Choice, Kind } from '../contract.ts';
import { normalizedName } from '../../text/normalizedName.ts';

/** Own properties only: every object inherits `constructor` and others, which are not in the list. */
const valueOrSynonym = <T extends string>(
  said: string,
  values: readonly T[],
  alike: Readonly<Record<string, T>>,
): T | undefined =>
  values.find((value) => value === said) ?? (Object.hasOwn(alike, said) ? alike[said] : undefined);

/** The values that are a letter or two from what was typed, by themselves or by a synonym. */
const nearValues = <T extends string>(
  said: string,
  values: readonly T[],
  alike: Readonly<Record<string, T>>,
): Choice[] => {
  const most = said.length < 3 ? 0 : Math.max(1, Math.floor(said.length / 3));
  const wordsFor = (value: T) => [value, ...Object.keys(alike).filter((word) => alike[word] === value)];
  const far = (one: string) => editDistance(said.slice(0, 40), one);
  return values
    .map((value) => ({ value, far: Math.min(...wordsFor(value).map(far)) }))
    .filter((one) => one.far <= most)
    .sort((a, b) => a.far - b.far)
    .slice(0, 3)
    .map(({ value }) => ({ name: value, value }));
};

const normalizedPick = (typed: string) => normalizedName(typed.replace(/[’']/g, '')).replaceAll(' ', '-');

/** One of a few words, or a synonym of one. A label explains a trade term. */
export const pick = <const T extends string>(
  values: readonly T[],
  alike: Readonly<Record<string, T>> = {},
  labels?: Readonly<Record<T, string>>,
): Kind<T> => ({
  control: { pick: values.map((value) => ({ name: labels?.[value] ?? value, value })) },
  example: values[0] ?? '',
  read(typed, { words }) {
    const said = normalizedPick(typed);
    const found =
      valueOrSynonym(said, values, alike) ??
      values.find((value) => normalizedPick(labels?.[value] ?? '') === said);
    if (found !== undefined) return { ok: true, value: found };
    const near = nearValues(said, values, alike);
    return { ok: false, why: words.option.notOneOf(typed, [...values]), ...(near.length > 0 && { near }) };
  },
  suggest: async (typed) =>
    values
      .filter((value) => value.startsWith(normalizedPick(typed)))
      .map((value): Choice => ({ name: labels?.[value] ?? value, value })),
});

export const yesNo: Kind<boolean> = {
  control: 'switch',
  example: 'yes',
  read(typed, { words }) {
    const said = normalizedPick(typed);
    if (/^(?:y|yes|yep|yeah|true|on|1|si|ja|oui)$/.test(said)) return { ok: true, value: true };
    if (/^(?:n|no|nope|false|off|0|nein|non)$/.test(said)) return { ok: true, value: false };
    return { ok: false, why: words.option.yesOrNo(typed) };
  },
  suggest: async () => [
    { name: 'yes', value: 'yes' },
    { name: 'no', value: 'no' },
  ],
};

/** Several of a few words, separated by commas or spaces. */
export const several = <const T extends string>(
  values: readonly T[],
  alike: Readonly<Record<string, T>> = {},
): Kind<T[]> => ({
  control: 'text',
  example: values.slice(0, 2).join(', '),
  read(typed, { words: { option: w } }) {
    const found: T[] = [];
    for (const part of typed.split(/[,;+&/]|\band\b/i)) {
      const said = normalizedPick(part);
      if (said === '') continue;
      const whole = valueOrSynonym(said, values, alike);
      const words = part.split(/\s+/).map(normalizedPick);
      const each = whole
        ? [whole]
        : words.filter((one) => one !== '').map((one) => valueOrSynonym(one, values, alike));
      for (const one of each) {
        if (one === undefined) return { ok: false, why: w.notOneOf(part.trim(), [...values]) };
        if (!found.includes(one)) found.push(one);
      }
    }
    return found.length === 0
      ? { ok: false, why: w.notOneOf(typed, [...values]) }
      : { ok: true, value: found };
  },
  suggest: async (typed) => {
    const before = typed.replace(/[^,;]*$/, '');
    const last = normalizedPick(typed.slice(before.length));
    return values
      .filter((value) => value.startsWith(last))
      .map((value) => ({ name: `${before}${value}`, value: `${before}${value}` }));
  },
});

export const observationsSeen: Kind<Observation[]> = several(observations, {
  'clear-water-on-top': 'clear-water',
  water: 'clear-water',
  supernatant: 'clear-water',
  'hard-cake': 'cake',
  'settled-cake': 'cake',
  lump: 'lumps',
  lumpy: 'lumps',
  'cake-is-gone': 'cake-gone',
  'no-cake': 'cake-gone',
  smells: 'smell',
  smelly: 'smell',
  stinks: 'smell',
  stink: 'smell',
  rotten: 'smell',
  mold: 'mould',
  mouldy: 'mould',
  moldy: 'mould',
  crystal: 'crystals',
  needles: 'crystals',
  frozen: 'ice',
  froze: 'ice',
  icy: 'ice',
  nothing: 'none',
  no: 'none',
});

/** How a glaze runs, as it looks. */
export const flowLook = pick(flowLooks, {
  watery: 'thin',
  runny: 'thin',
  good: 'right',
  ok: 'right',
  in: 'right',
  gel: 'thick',
});
