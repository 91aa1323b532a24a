import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { Did, WireLeaf, WireOption } from '../wire.ts';
import { nameOf } from './jobs.ts';

/** Quantities that speak for themselves beside a bucket's name. */
const plain = ['weight', 'amount', 'seconds', 'minutes', 'mesh'];

const degrees = (unit: string): string => (/^[CF]$/i.test(unit) ? `°${unit.toUpperCase()}` : unit);

const valueText = (name: string, value: string, option: WireOption | undefined): string => {
  if (option && typeof option.control === 'object')
    return (option.control.pick.find((one) => one.value === value)?.name ?? value).replace(/ \(.*\)$/, '');
  const [, figure, unit = ''] = /^([\d.,]+)\s*(\p{L}*|°[CF]|%)$/u.exec(value.trim()) ?? [];
  if (figure === undefined) return value;
  const known = unit === '' ? words.bareUnits[name] : degrees(unit);
  return known === undefined ? figure : `${figure} ${known}`;
};

const optionText = (name: string, value: string, option: WireOption | undefined): string => {
  const called = name.replaceAll('-', ' ');
  if (option?.control === 'switch' && /^(?:yes|no)$/.test(value))
    return value === 'yes' ? called : `not ${called}`;
  if (words.prose.includes(name)) return `“${value}”`;
  const text = valueText(name, value, option);
  const isRange = /^[\d.,]+\s*[-–]/.test(value);
  const isNumber = /^\d/.test(text) && name !== 'bucket' && name !== 'entry';
  return (plain.includes(name) && !isRange) || (option?.needed === true && !isNumber)
    ? text
    : `${called} ${text}`;
};

/** The moment at which a line was written. The stamp beside it shows when. */
const isInstant = (value: string): boolean => /^\d{4}-\d\d-\d\dT[\d:.]+Z$/.test(value);

/** What somebody did, as they would say it: “Reading, Gull Grey, 229.9 g, 14 s”. */
export const inWords = ({ path, typed }: Did, leaf: WireLeaf | undefined): string => {
  const name = nameOf({ path });
  const rest = Object.entries(typed)
    .filter(([, value]) => !isInstant(value))
    .map(([option, value]) =>
      optionText(
        option,
        value,
        leaf?.options.find((one) => one.name === option),
      ),
    )
    .join(', ');
  if (rest === '') return name;
  return name.endsWith('?') ? `${name} ${rest}` : `${name}, ${rest}`;
};
