import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WirePost } from '../wire.ts';
import { button, h } from './dom.ts';
import { tile, waitingTile } from './tile.ts';
import type { Waiting } from './waitingLines.ts';

/** Whose phone it is, what a press does, and what there is to begin with when nothing was said yet. */
type Context = Parameters<typeof tile>[1] & { begin: HTMLElement[] };

const mostShown = 200;
const near = 160;

/** Everything said, newest last. Whoever reads further up is not torn away; a button leads down again. */
export class Stream {
  readonly element: HTMLElement;
  readonly #list: HTMLElement;
  readonly #newest: HTMLButtonElement;
  readonly #quiet: HTMLElement;
  readonly #context: Context;
  #last = 0;
  #following = true;
  #arriving: HTMLElement | undefined;

  constructor(context: Context) {
    this.#context = context;
    this.#list = h('div', {
      class: 'posts',
      role: 'log',
      'aria-label': words.stream,
      'aria-live': 'polite',
      'aria-relevant': 'additions',
    });
    this.#quiet = h(
      'div',
      { class: 'hush' },
      h('p', {}, context.begin.length > 0 ? words.begin : words.quiet),
      h('div', { class: 'actions' }, ...context.begin),
    );
    this.#newest = button(words.newest, () => this.toNewest(), { class: 'newest', hidden: true });
    this.element = h(
      'main',
      { class: 'stream', tabindex: '0', 'aria-label': words.stream },
      this.#quiet,
      this.#list,
    );
    this.element.addEventListener('scroll', () => {
      const { scrollTop, scrollHeight, clientHeight } = this.element;
      this.#following = scrollHeight - scrollTop - clientHeight < near;
      if (this.#following) this.#newest.hidden = true;
    });
    // A keyboard that opens, a picture that arrives: whoever was at the newest stays there.
    const sizes = new ResizeObserver(() => this.#following && this.toNewest());
    sizes.observe(this.element);
  }

  get newestButton(): HTMLButtonElement {
    return this.#newest;
  }

  last(): number {
    return this.#last;
  }

  /** Shows a post in its place; one that is there already is left as it is. */
  show(post: WirePost): void {
    const waiting = this.#byId(post.id);
    this.#last = Math.max(this.#last, post.no);
    if (waiting?.dataset['no'] !== undefined) return;
    const follow = this.#following || post.member === this.#context.me;
    waiting?.remove();
    const made = tile(post, this.#context);
    const after = [...this.#list.children].findLast(
      (one) => one instanceof HTMLElement && Number(one.dataset['no'] ?? Infinity) < post.no,
    );
    if (after) after.after(made);
    else this.#list.prepend(made);
    while (this.#list.childElementCount > mostShown) this.#list.firstElementChild?.remove();
    this.#arrived(made, follow);
  }

  wait(item: Waiting, note: string, presses: HTMLElement[] = []): void {
    const shown = waitingTile(item, note, presses);
    const before = this.#byId(item.id);
    // Answered already: what came by the stream or another tab stands.
    if (before?.dataset['no'] !== undefined) return;
    if (before) before.replaceWith(shown);
    else this.#list.append(shown);
    this.#arrived(shown, true);
  }

  /** Takes a waiting line out; once it is answered, its post stays. */
  forgetWaiting(id: string): void {
    const shown = this.#byId(id);
    if (shown?.dataset['no'] === undefined) shown?.remove();
  }

  toNewest(): void {
    this.element.scrollTop = this.element.scrollHeight;
    this.#newest.hidden = true;
  }

  /** Scrolls once a frame, however much arrived: asking where things are makes the browser lay them all out. */
  #arrived(made: HTMLElement, follow: boolean): void {
    this.#quiet.hidden = true;
    if (!follow) {
      this.#newest.hidden = false;
      return;
    }
    if (this.#arriving === undefined) requestAnimationFrame(() => this.#follow());
    this.#arriving = made;
  }

  #follow(): void {
    const made = this.#arriving;
    this.#arriving = undefined;
    this.toNewest();
    // The answer is its first line: a long one begins at the top.
    if (made?.nextElementSibling === null && made.offsetHeight > this.element.clientHeight)
      made.scrollIntoView({ block: 'start' });
  }

  #byId(id: string): HTMLElement | undefined {
    for (const child of this.#list.children)
      if (child instanceof HTMLElement && child.dataset['id'] === id) return child;
    return undefined;
  }
}
