import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import { button, h } from './browser/dom.ts';

/** A dialog that closes by its button, by Escape, or by a press outside it. */
export const openSheet = (title: string, ...content: (Node | string)[]): HTMLDialogElement => {
  const close = button('×', () => sheet.close(), { class: 'close', 'aria-label': words.close });
  const heading = h('h2', { id: 'sheet-title' }, title);
  const sheet = h(
    'dialog',
    {
      class: 'sheet',
      'aria-labelledby': 'sheet-title',
      close: () => sheet.remove(),
      click: (event) => {
        if (event.target === sheet) sheet.close();
      },
    },
    h('div', { class: 'sheet-in' }, h('header', {}, heading, close), ...content),
  );
  document.body.append(sheet);
  sheet.showModal();
  return sheet;
};

/** Whether the theme is dark: the choice made on this phone, otherwise its system setting. */
const isDark = (): boolean => {
  const { look } = document.documentElement.dataset;
  return look === undefined ? matchMedia('(prefers-color-scheme: dark)').matches : look === 'dark';
};

/** A chart that enlarges when pressed. Its alt text says what it shows. */
export const picture = (no: number, alt: string): HTMLElement => {
  const src = (size: 'small' | 'large') =>
    `/api/post/${no}/chart.svg?size=${size}&theme=${isDark() ? 'dark' : 'light'}`;
  const image = (size: 'small' | 'large') => {
    const drawn = h('img', { src: src(size), alt, class: 'chart', loading: 'lazy', decoding: 'async' });
    let tries = 5;
    // A server that has much to draw asks to wait.
    drawn.addEventListener('error', () => {
      tries -= 1;
      if (tries > 0) setTimeout(() => (drawn.src = src(size)), 2_000);
    });
    return drawn;
  };
  return h(
    'button',
    {
      type: 'button',
      class: 'picture',
      'aria-label': words.enlarge(alt),
      click: () => {
        const large = image('large');
        const pinned = h('div', { class: 'pinned' });
        const held = h('div', { class: 'enlarged', tabindex: '0' }, large, pinned);
        large.addEventListener('load', () => {
          // The newest data is on the right.
          held.scrollLeft = held.scrollWidth;
          // The title and the scale stay where they are while the rest scrolls: the same picture, loaded already.
          pinned.append(h('img', { src: `${src('large')}#margin`, alt: '', class: 'chart' }));
        });
        openSheet(words.chart, held);
      },
    },
    image('small'),
  );
};

export const openFile = (href: string, name: string): void => {
  const frame = h('iframe', { src: `${href}&show`, title: name, class: 'paper' });
  const print = button(words.print, () => frame.contentWindow?.print(), { class: 'stamp main' });
  openSheet(words.sheet, frame, print);
};
