import { roundPageWords as words } from '../../words/platform/roundPageWords.ts';
import type { WireAction, WirePost, WireReply } from '../wire.ts';
import { phoneNow } from './browser/clock.ts';
import { button, h } from './browser/dom.ts';
import { get } from './browser/net.ts';
import { actionButton, pressBar } from './pressBar.ts';
import { nodes } from './text.ts';

interface Context {
  me: string;
  keeper: boolean;
  run(line: string): void;
  edit(action: WireAction): void;
  /** The room's posts, which a keeper's round takes the place of. */
  room: HTMLElement;
}

/** A reminder is in the list this long after its post came. */
const afterReminder = 1_500;
/** What others log changes a keeper's round; it is looked up at most so often. */
const atMostEvery = 3_000;
/** What changes a member's list: their own coats, pieces and reminders. A reminder has no line. */
const ofMembers = /^(?:$|\/(?:coat|prep|remind|undo)\b)/;
/** Time passes too: what is fit now is stale tomorrow. */
const every = 120_000;

/**
 * What there is to do: a keeper's first page, and for members a list above the posts that is there until it is dealt
 * with.
 */
export class Round {
  readonly element: HTMLElement;
  readonly tabs: HTMLElement | undefined;
  readonly #context: Context;
  readonly #list = h('ol', { class: 'rows' });
  readonly #title = h('h2', {});
  readonly #said = h('p', { class: 'answered', role: 'status' });
  readonly #bar = h('div', { class: 'actions' });
  readonly #count = h('span', {});
  /** The lines that were pressed here and have no answer yet. */
  readonly #pressed = new Set<string>();
  readonly #clock: ReturnType<typeof setInterval>;
  #soon: ReturnType<typeof setTimeout> | undefined;
  #looked = 0;

  constructor(context: Context) {
    this.#context = context;
    if (context.keeper) {
      this.element = h(
        'main',
        { class: 'round', 'aria-label': words.waiting, tabindex: '0' },
        h('div', { class: 'round-in' }, this.#title, this.#said, this.#list, this.#bar),
      );
      this.tabs = this.#tabs();
      this.#title.textContent = words.loading;
      this.open(true);
    } else {
      this.element = h(
        'section',
        { class: 'standing', 'aria-label': words.waiting, hidden: true },
        h('details', {}, h('summary', {}, this.#count), this.#said, this.#list),
      );
    }
    this.#clock = setInterval(() => void this.look(), every);
  }

  /** Shows the round in the room's place, or the room. */
  open(isRound: boolean): void {
    if (!this.#context.keeper) return;
    this.element.hidden = !isRound;
    this.#context.room.hidden = isRound;
    for (const [i, tab] of [...(this.tabs?.children ?? [])].entries())
      tab.setAttribute('aria-pressed', String((i === 0) === isRound));
  }

  /** A post came: an answer to what was pressed here, or something that may change what waits. */
  heard(post: WirePost): void {
    if (this.#pressed.delete(post.line)) this.#answered(post.reply);
    const mine = post.member === this.#context.me;
    if (!(this.#context.keeper ? mine || !post.private : mine && ofMembers.test(post.line))) return;
    // A reminder stands only once the room has noted that it was sent.
    const isReminder = post.line === '';
    const usual = mine ? 0 : Math.max(0, this.#looked + atMostEvery - phoneNow());
    const pause = isReminder ? afterReminder : usual;
    this.#soon ??= setTimeout(() => void this.look(), pause);
  }

  async look(): Promise<void> {
    clearTimeout(this.#soon);
    this.#soon = undefined;
    this.#looked = phoneNow();
    const answer = await get<WireReply>('/api/round');
    if (answer.ok) this.show(answer.value);
    else if (this.#list.childElementCount === 0) this.#failed();
  }

  show(reply: WireReply): void {
    const { title, facts, actions } = reply;
    this.#title.replaceChildren(...nodes(title));
    this.#list.replaceChildren(...facts.map((fact) => this.#row(fact)));
    const pressed = (action: WireAction) => {
      this.open(false);
      this.#press(action);
    };
    this.#bar.replaceChildren(
      ...actions.map((action) => actionButton(action, () => pressed(action), 'stamp quiet')),
    );
    this.#count.textContent = this.#context.keeper
      ? words.roundOf(facts.length)
      : words.standing(facts.length);
    if (!this.#context.keeper) this.element.hidden = facts.length === 0;
  }

  close(): void {
    clearInterval(this.#clock);
    clearTimeout(this.#soon);
  }

  /** The answer stays in sight wherever the list is scrolled to, with its undo. */
  #answered({ title, logged }: WireReply): void {
    const undo = logged?.undo;
    this.#said.replaceChildren(
      h('span', {}, ...nodes(title)),
      ...(undo ? [actionButton(undo, () => this.#press(undo), 'slip')] : []),
      button('×', () => this.#said.replaceChildren(), { class: 'slip', 'aria-label': words.close }),
    );
  }

  #tabs(): HTMLElement {
    this.#count.textContent = words.round;
    return h(
      'nav',
      { class: 'tabs', 'aria-label': words.tabs },
      button(this.#count, () => this.open(true), { class: 'tab' }),
      button(words.room, () => this.open(false), { class: 'tab' }),
    );
  }

  #row({ label, text, presses = [] }: WireReply['facts'][number]): HTMLElement {
    const bar = pressBar(
      presses,
      (action) => this.#press(action),
      (action) => action === presses[0] && action.press === 'run',
    );
    return h('li', {}, h('b', {}, ...nodes(label)), h('p', {}, ...nodes(text)), presses.length > 0 && bar);
  }

  #press(action: WireAction): void {
    if (action.press === 'edit') return this.#context.edit(action);
    this.#pressed.add(action.line);
    this.#context.run(action.line);
  }

  #failed(): void {
    this.#title.textContent = words.failed;
    this.#bar.replaceChildren(button(words.again, () => void this.look(), { class: 'stamp quiet' }));
  }
}
