import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WireLeaf, WireOption, WireText } from '../wire.ts';
import { h } from './browser/dom.ts';
import { field, type Field } from './field.ts';
import { nameOf } from './jobs.ts';
import { openSheet } from './lightbox.ts';
import { post } from './browser/net.ts';
import type { Sending } from './waitingLines.ts';
import { keepForNextTime } from './recent.ts';
import { nodes } from './text.ts';

const short = 5;

/** The options shown first: the form's own; otherwise the needed ones and a few more. */
const asked = ({ form, options }: WireLeaf, typed: Record<string, string>): WireOption[] => {
  const first =
    form.length > 0
      ? options.filter(({ name }) => form.includes(name))
      : [...options.filter(({ needed }) => needed), ...options.filter(({ needed }) => !needed)].slice(
          0,
          short,
        );
  return [...first, ...options.filter((one) => one.name in typed && !first.includes(one))];
};

const submitWord = ({ path, effect }: WireLeaf): string => {
  const isOneOf = (names: readonly string[]) =>
    names.some((name) => name === path[0] || name === path.join(' '));
  if (effect === 'asks') return isOneOf(words.questions) ? words.ask : words.show;
  return isOneOf(words.saved) ? words.save : words.log;
};

type Suggested = { name: string; value: string; typed?: string }[];

/** A form built from a command, with known values filled in and errors shown. Returns what closes it. */
export const openForm = (
  leaf: WireLeaf,
  {
    typed,
    trouble,
    above,
  }: { typed: Record<string, string>; trouble?: WireText | undefined; above?: HTMLElement | undefined },
  send: (sending: Sending) => void,
): (() => void) => {
  const { path } = leaf;
  const name = path.join(' ');
  const fields = new Map<string, Field>();
  const values = (): Record<string, string> =>
    Object.fromEntries(
      [...fields]
        .map(([option, { value }]) => [option, value()] as const)
        .filter(([, value]) => value !== ''),
    );
  const make = (option: WireOption): HTMLElement => {
    const made = field(option, name, typed[option.name], async (text) => {
      const answer = await post<Suggested>('/api/suggest', {
        path,
        typed: { ...values(), [option.name]: text },
        option: option.name,
      });
      return answer.ok ? answer.value : [];
    });
    fields.set(option.name, made);
    return made.element;
  };
  const first = asked(leaf, typed);
  const rest = leaf.options.filter((option) => !first.includes(option));
  const form = h(
    'form',
    {
      class: 'form',
      novalidate: true,
      // With nothing else to fill in, the choice is the question.
      picked: () => leaf.effect === 'asks' && first.length === 1 && form.requestSubmit(),
      submit: (event) => {
        event.preventDefault();
        const filled = values();
        const missing = leaf.options.find(
          ({ needed, name: option }) => needed && filled[option] === undefined,
        );
        if (missing) return fields.get(missing.name)?.ask();
        keepForNextTime(filled);
        sheet.close();
        send({ path, typed: filled });
      },
    },
    trouble
      ? h('p', { class: 'trouble', role: 'alert' }, ...nodes(trouble))
      : (above ?? (leaf.about !== nameOf(leaf) && h('p', { class: 'lead' }, leaf.about))),
    ...first.map(make),
    rest.length > 0 && h('details', { class: 'rest' }, h('summary', {}, words.optional), ...rest.map(make)),
    h('button', { type: 'submit', class: 'stamp main' }, submitWord(leaf)),
  );
  const sheet = openSheet(nameOf(leaf), form);
  const open = [...fields].find(
    ([option]) => typed[option] === undefined && first.some((one) => one.name === option),
  );
  // Focusing the first field opens a phone's keyboard, which would cover the form: so do it only with a mouse.
  if (matchMedia('(pointer: fine)').matches) open?.[1].focus();
  return () => sheet.close();
};
