import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WireBucket } from '../wire.ts';
import { h } from './browser/dom.ts';
import { markedScale } from './scale.ts';
import { agoText, nodes } from './text.ts';

const { board: w } = words;

const gravityLine = ({ gravity, window }: WireBucket): HTMLElement => {
  const value = gravity ? gravity.value.toFixed(2) : w.noReading;
  const ends = window && ([window.low.toFixed(2), window.high.toFixed(2)] as const);
  return h(
    'div',
    { class: 'gravity' },
    h('b', {}, value, gravity && !gravity.believed ? h('small', {}, ` ${w.unbelieved}`) : undefined),
    window && ends ? markedScale({ mark: gravity, window }, w.gravity(value, ...ends)) : undefined,
    ends ? h('small', { class: 'of' }, w.window(...ends)) : undefined,
  );
};

/** One bucket on the board. It stays when the board is refreshed, so that a tap during that is not lost. */
export interface BoardCard {
  element: HTMLElement;
  show(bucket: WireBucket): void;
  /** Makes the text as large as it can be without anything being cut. */
  fit(): void;
}

const smallest = 0.4;

const isCut = (element: Element): boolean =>
  element.scrollHeight > element.clientHeight + 1 || element.scrollWidth > element.clientWidth + 1;

export const boardCard = (): BoardCard => {
  const content = h('div', { class: 'content' });
  const open = h('a', { class: 'open' });
  const element = h('li', { class: 'bucket' }, content, open);
  return {
    element,
    show(bucket) {
      element.dataset['step'] = bucket.step;
      open.href = `/bucket/${bucket.no}`;
      open.setAttribute('aria-label', w.open(bucket.no, bucket.name));
      content.replaceChildren(
        h(
          'div',
          { class: 'head' },
          h('span', { class: 'no' }, String(bucket.no)),
          h('h2', {}, h('bdi', {}, bucket.name)),
          h(
            'span',
            { class: 'stirred' },
            bucket.stirredAt === undefined ? w.neverStirred : w.stirred(agoText(bucket.stirredAt)),
          ),
        ),
        h('p', { class: 'state' }, bucket.stepName),
        gravityLine(bucket),
        h('p', { class: 'needs' }, ...nodes(bucket.needs)),
      );
    },
    fit() {
      for (let share = 1; share >= smallest; share -= 0.05) {
        element.style.setProperty('--fit', share.toFixed(2));
        if (!isCut(content) && ![...content.children].some(isCut)) return;
      }
    },
  };
};
