import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WirePost } from '../wire.ts';
import { serverNow } from './browser/clock.ts';
import { button, h } from './browser/dom.ts';
import { strike, tile, waitingTile } from './tile.ts';
import type { Waiting } from './waitingLines.ts';

/** Who is signed in, what a button does, and what an empty stream shows. */
type Context = Parameters<typeof tile>[1] & { quiet: string; steps: HTMLElement };

const mostShown = 200;
const near = 160;
/** An answer of a bucket that others use too is old after an hour: common practice. */
const oldAfter = 3_600_000;

/** The posts, newest last. It scrolls down only if the reader is at the end; otherwise a button does. */
export class Stream {
  readonly element: HTMLElement;
  readonly #list: HTMLElement;
  readonly newestButton: HTMLButtonElement;
  readonly #quiet: HTMLElement;
  readonly #context: Context;
  readonly #struck = new Set<string>();
  #last = 0;
  #following = true;
  /** The reader has scrolled past the first line of the newest post. */
  #isPastTop = false;
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
    this.#quiet = h('p', { class: 'hush' }, context.quiet);
    this.newestButton = button(words.newest, () => this.toNewest(), { class: 'newest', hidden: true });
    this.element = h(
      'main',
      { class: 'stream', tabindex: '0', 'aria-label': words.stream },
      this.#quiet,
      this.#list,
      context.steps,
    );
    this.element.addEventListener('scroll', () => {
      const { scrollTop, scrollHeight, clientHeight } = this.element;
      this.#following = scrollHeight - scrollTop - clientHeight < near;
      if (this.#following) this.newestButton.hidden = true;
      this.#isPastTop = this.#hidesTopOf(this.#list.lastElementChild);
    });
    // When a keyboard or what waits changes the height, a reader at the end stays there, and one at a first line too.
    const sizes = new ResizeObserver(() => this.#following && this.#toEnd(this.#list.lastElementChild));
    sizes.observe(this.element);
    setInterval(() => this.#age(), 60_000);
  }

  /** Every post up to this number has come. The answer to this phone's own line may come before others' posts. */
  last(): number {
    return this.#last;
  }

  told({ no }: WirePost): void {
    this.#last = Math.max(this.#last, no);
  }

  /** Inserts a post in order; ignores one that is shown already, but for an answer that only this phone is told. */
  show(post: WirePost): void {
    const waiting = this.#byId(post.id);
    if (waiting?.dataset['no'] !== undefined && post.reply.once === undefined) return;
    const follow = this.#following || post.member === this.#context.me;
    waiting?.remove();
    const made = tile(post, this.#context);
    const after = [...this.#list.children].findLast(
      (one) => one instanceof HTMLElement && Number(one.dataset['no'] ?? Infinity) < post.no,
    );
    if (after) after.after(made);
    else this.#list.prepend(made);
    for (const entry of post.reply.tookBack ?? []) this.#struck.add(entry);
    this.#age();
    while (this.#list.childElementCount > mostShown) this.#list.firstElementChild?.remove();
    this.#arrived(made, follow);
  }

  wait(item: Waiting, note: string, presses: HTMLElement[] = []): void {
    const shown = waitingTile(item, note, { presses, commands: this.#context.commands });
    const before = this.#byId(item.id);
    // The answer came by the event stream or from another tab.
    if (before?.dataset['no'] !== undefined) return;
    if (before) before.replaceWith(shown);
    else this.#list.append(shown);
    this.#arrived(shown, true);
  }

  forgetWaiting(id: string): void {
    const shown = this.#byId(id);
    if (shown?.dataset['no'] === undefined) shown?.remove();
  }

  toNewest(): void {
    this.element.scrollTop = this.element.scrollHeight;
    this.newestButton.hidden = true;
  }

  /** Scrolls once a frame, however many posts arrived: reading positions forces a layout. */
  #arrived(made: HTMLElement, follow: boolean): void {
    this.#quiet.hidden = true;
    if (!follow) {
      this.newestButton.hidden = false;
      return;
    }
    if (this.#arriving === undefined) requestAnimationFrame(() => this.#follow());
    this.#arriving = made;
  }

  #follow(): void {
    const made = this.#arriving;
    this.#arriving = undefined;
    this.#isPastTop = false;
    this.#toEnd(made?.nextElementSibling === null ? made : null);
  }

  /** The answer is the first line, so a long post is shown from its top, unless the reader has read on. */
  #toEnd(newest: Element | null): void {
    const isReadOn = this.#isPastTop;
    this.toNewest();
    if (!isReadOn && this.#hidesTopOf(newest)) newest?.scrollIntoView({ block: 'start' });
  }

  #hidesTopOf(post: Element | null): boolean {
    return post !== null && post.getBoundingClientRect().top < this.element.getBoundingClientRect().top - 1;
  }

  /** Strikes what was taken back, and greys answers that are old or that a later one replaces. */
  #age(): void {
    const later = new Set<string>();
    for (const one of [...this.#list.children].toReversed()) {
      if (!(one instanceof HTMLElement)) continue;
      const { entry, bucket, said } = one.dataset;
      if (entry !== undefined && this.#struck.has(entry)) strike(one);
      const replaced = bucket !== undefined && later.has(bucket);
      one.classList.toggle('old', replaced || (said !== undefined && serverNow() - Number(said) > oldAfter));
      if (bucket !== undefined) later.add(bucket);
    }
  }

  #byId(id: string): HTMLElement | null {
    return this.#list.querySelector<HTMLElement>(`[data-id="${CSS.escape(id)}"]`);
  }
}
