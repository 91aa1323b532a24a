import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WireOption } from '../wire.ts';
import { button, choiceGroup, h, remember } from './browser/dom.ts';
import { lastTime, recentFirst } from './recent.ts';

export interface Field {
  element: HTMLElement;
  /** The value as it would be typed; empty if none. */
  value(): string;
  focus(): void;
  /** Marks the field as required until something is entered. */
  ask(): void;
}
type Made = Omit<Field, 'ask'>;

interface Given {
  name: string;
  value: string;
}
type Suggest = (typed: string) => Promise<{ name: string; value: string; typed?: string }[]>;

/** Commands in which the bucket is optional, so none is suggested. */
const asksAtLarge = new Set(['ask', 'fired']);

const fieldId = (path: string, name: string) => `f-${path}-${name}`.replaceAll(' ', '-');

const withRequiredMark = ({ element, value, focus }: Made): Field => {
  const note = h('p', { class: 'trouble', role: 'alert' });
  element.append(note);
  const entered = () => {
    if (value() !== '') note.textContent = '';
  };
  element.addEventListener('input', entered);
  element.addEventListener('click', entered);
  return {
    element,
    value,
    focus,
    ask() {
      note.textContent = words.fillIn;
      focus();
      element.scrollIntoView({ block: 'center' });
    },
  };
};

const labelled = (option: WireOption, target: string | undefined, ...content: Node[]): HTMLElement => {
  const label = h(
    target === undefined ? 'div' : 'label',
    { class: 'about', ...(target === undefined ? { id: `${option.name}-about` } : { for: target }) },
    option.about,
    option.needed && h('i', {}, ` ${words.needed}`),
  );
  return h('div', { class: 'field', 'data-option': option.name }, label, ...content);
};

const choices = (option: WireOption, all: readonly Given[], given: string): Made => {
  let chosen = given;
  const choose = (value: string) => {
    chosen = chosen === value ? '' : value;
    return chosen !== '';
  };
  const group = choiceGroup(all, given, choose, { 'aria-labelledby': `${option.name}-about` });
  const first = group.firstElementChild;
  return {
    element: labelled(option, undefined, group),
    value: () => chosen,
    focus: () => first instanceof HTMLElement && first.focus(),
  };
};

const isBare = (typed: string) => /^\d+(?:[.,]\d+)?$/.test(typed.trim());

/** A numeric field with a unit switch. A unit that is typed wins. */
const measured = (option: WireOption, path: string, given: string): Made => {
  const { units = [], besides = [], name } = option;
  const [, figure = given, unitGiven] = /^([\d.,]+)\s*([a-z°%]+)$/i.exec(given) ?? [];
  const input = h('input', {
    id: fieldId(path, name),
    inputmode: 'decimal',
    autocomplete: 'off',
    enterkeyhint: 'next',
    placeholder: words.suchAs(/^[\d.,-]+/.exec(option.example)?.[0] ?? option.example),
    value: figure,
  });
  const unitSlot = `room.unit.${path}.${name}`;
  let unit = [unitGiven, remember.get(unitSlot), units[0]].find(
    (one) => one !== undefined && units.includes(one),
  );
  const row = h('div', { class: 'measured' }, input);
  const choose = (value: string) => {
    unit = value;
    remember.set(unitSlot, value);
  };
  if (units.length > 0)
    row.append(
      choiceGroup(
        units.map((one) => ({ name: one, value: one })),
        unit,
        choose,
        { class: 'units', each: 'unit', 'aria-label': words.unit(option.about) },
      ),
    );
  for (const { name: said, value } of besides)
    row.append(button(said, () => (input.value = value), { class: 'choice' }));
  return {
    element: labelled(option, input.id, row),
    value: () =>
      isBare(input.value) && unit !== undefined ? `${input.value.trim()}${unit}` : input.value.trim(),
    focus: () => input.focus(),
  };
};

/** A text field with suggestions: the studio's buckets, cups and vessels. */
const worded = (option: WireOption, path: string, given: string, suggest: Suggest): Made => {
  const long = words.prose.includes(option.name);
  const props = {
    id: fieldId(path, option.name),
    autocomplete: 'off',
    autocapitalize: 'off',
    enterkeyhint: 'next',
    placeholder: words.suchAs(option.example),
  };
  const input = long ? h('textarea', { ...props, rows: 2 }, given) : h('input', { ...props, value: given });
  const offered = h('div', { class: 'offered', role: 'group', 'aria-label': words.completions });
  const offer = async () => {
    const typed = input.value;
    const all = await suggest(typed);
    if (input.value !== typed) return;
    const byRecent = typed === '' && option.name === 'bucket' && !asksAtLarge.has(path);
    const found = byRecent ? recentFirst(all) : all;
    offered.replaceChildren(
      ...found.map(({ name, value, typed: written }) =>
        button(
          name,
          () => {
            input.value = written ?? value;
            offered.replaceChildren();
            input.dispatchEvent(new Event('picked', { bubbles: true }));
          },
          { class: 'choice' },
        ),
      ),
    );
  };
  if (option.suggests) {
    input.addEventListener('input', () => void offer());
    input.addEventListener('focus', () => {
      if (input.value === '') void offer();
    });
    if (given === '' && option.needed) void offer();
    // A button fills in a bucket's number; show its name.
    if (given !== '')
      void suggest(given).then((found) => {
        const one = found.find(({ value }) => value === given);
        if (one && input.value === given) input.value = one.typed ?? one.name;
      });
  }
  return {
    element: labelled(option, input.id, input, offered),
    value: () => input.value.trim(),
    focus: () => input.focus(),
  };
};

const yesNo: Given[] = [
  { name: words.yes, value: 'yes' },
  { name: words.no, value: 'no' },
];

const controlFor = (option: WireOption, path: string, given: string | undefined, suggest: Suggest): Made => {
  const { control, name } = option;
  const value = given ?? lastTime(name) ?? '';
  if (control === 'switch') return choices(option, yesNo, value);
  if (typeof control === 'object' && control.pick.length <= 8) return choices(option, control.pick, value);
  if (typeof control === 'object')
    return worded({ ...option, suggests: true }, path, value, async (typed) =>
      control.pick.filter((one) => one.name.toLowerCase().includes(typed.toLowerCase())),
    );
  if (control === 'number' || option.units || option.besides) return measured(option, path, value);
  return worded(option, path, value, suggest);
};

export const field = (...about: Parameters<typeof controlFor>): Field =>
  withRequiredMark(controlFor(...about));
