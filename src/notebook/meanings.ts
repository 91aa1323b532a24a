import { normalizedName } from '../text/normalizedName.ts';
import { unitsNamed } from '../parse/tradeUnits.ts';

/** What a column of a notebook can hold. */
export const meanings = [
  'date',
  'time',
  'bucket',
  'who',
  'gravity',
  'scale',
  'weight',
  'vessel',
  'seconds',
  'cup',
  'look',
  'gap',
  'temperature',
  'seen',
  'stirred',
  'minutes',
  'sieved',
  'mesh',
  'water',
  'draw-off',
  'dry',
  'flocculant',
  'deflocculant',
  'what',
  'amount',
  'sure',
  'note',
  'ignore',
] as const;
export type Meaning = (typeof meanings)[number];

export interface Column {
  index: number;
  header: string;
  meaning: Meaning;
  /** The unit that is added to each bare number of the column. */
  unit?: string;
}

/** Amounts of these went in or came out: a bare number needs a unit. */
export const addedMeanings = ['water', 'draw-off', 'dry', 'flocculant', 'deflocculant'] as const;
export const numberMeanings: readonly Meaning[] = [
  'gravity',
  'weight',
  'seconds',
  'gap',
  'temperature',
  'minutes',
  'mesh',
  'amount',
  ...addedMeanings,
];

/** How columns are usually headed. A word with two meanings is not here: it is asked about. */
const usual: Readonly<Partial<Record<Meaning, readonly string[]>>> = {
  date: ['day', 'datum', 'fecha'],
  time: ['hour', 'uhrzeit', 'zeit'],
  bucket: ['glaze', 'bucket name', 'glaze name', 'pail', 'eimer', 'glasur'],
  who: ['by', 'member', 'person', 'initials', 'wer'],
  gravity: ['sg', 's g', 'specific gravity', 'spec gravity'],
  seconds: ['sec', 'secs', 'efflux', 'efflux time', 'flow time'],
  cup: ['flow cup'],
  temperature: ['temp'],
  water: ['water added', 'added water'],
  'draw-off': ['drawn off', 'water drawn off'],
  stirred: ['stirred to the bottom'],
  note: ['notes', 'comment', 'comments', 'remark', 'remarks', 'notiz'],
};

const isMeaning = (name: string): Meaning | undefined =>
  meanings.find((meaning) => normalizedName(meaning) === name);

const meaningNamed = (name: string): Meaning | undefined =>
  isMeaning(name) ?? meanings.find((meaning) => usual[meaning]?.includes(name));

const isUnit = (typed: string): boolean => unitsNamed(typed, 'metric').length > 0;

/** A meaning as it is typed, with a unit where cells are bare numbers: `water ml`, `temperature F`. */
export const readMeaning = (typed: string): { meaning: Meaning; unit?: string } | undefined => {
  const text = typed.trim();
  const whole = meaningNamed(normalizedName(text));
  if (whole) return { meaning: whole };
  const [, name = '', unit = ''] = /^(\S+)\s+(.+)$/.exec(text) ?? [];
  const meaning = isMeaning(normalizedName(name));
  return meaning && isUnit(unit) ? { meaning, unit } : undefined;
};

/** What a column means by its name alone, with the unit in it: `Water (ml)`, `Temp. °F`. */
export const guessMeaning = (header: string): { meaning: Meaning; unit?: string } | undefined => {
  const whole = meaningNamed(normalizedName(header));
  if (whole) return { meaning: whole };
  const [, name = '', bracketed, last] = /^(.*?)\s*(?:[([]([^)\]]+)[)\]]|\s(\S+))\s*$/.exec(header) ?? [];
  const meaning = meaningNamed(normalizedName(name));
  const unit = (bracketed ?? last ?? '').trim();
  return meaning && isUnit(unit) ? { meaning, unit } : undefined;
};
