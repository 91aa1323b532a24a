import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WireAction, WireReply, WireText } from '../wire.ts';
import { h } from './browser/dom.ts';
import { markedScale } from './scale.ts';
import { nodes } from './text.ts';

const lengthOf = (text: WireText): number =>
  text.reduce((sum, part) => sum + (typeof part === 'string' ? part.length : 8), 0);

type WireFact = WireReply['facts'][number];

type Pressable = (presses: WireAction[]) => HTMLElement | undefined;

/** A fact; a measured value stands on the scale of its window, as on the wall. */
const fact = ({ label, text, scale, presses }: WireFact, pressable: Pressable): HTMLElement =>
  scale
    ? h(
        'div',
        { class: 'on-scale' },
        h('dt', {}, ...nodes(label)),
        h(
          'dd',
          {},
          h(
            'span',
            { class: lengthOf(scale.text) > 16 ? 'wraps' : 'value' },
            ...nodes(scale.text),
            scale.under && h('small', {}, h('span', { class: 'unseen' }, ', '), ...nodes(scale.under)),
          ),
          markedScale({ mark: scale, window: scale }),
          h('small', {}, h('span', { class: 'unseen' }, words.window), ' ', ...nodes(scale.window)),
        ),
      )
    : h('div', {}, h('dt', {}, ...nodes(label)), h('dd', {}, ...nodes(text), presses && pressable(presses)));

export const facts = (all: WireFact[], pressable: Pressable): HTMLElement | undefined => {
  if (all.length === 0) return undefined;
  const lines = all.length > 5 || all.some(({ text, scale }) => !scale && lengthOf(text) > 44);
  const rows = all.some(({ scale }) => scale);
  return h(
    'dl',
    { class: ['facts', rows ? 'rows' : lines ? 'long' : ''].join(' ').trim() },
    ...all.map((one) => fact(one, pressable)),
  );
};
