import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WireStep, WireStudio } from '../wire.ts';
import { button, h } from './browser/dom.ts';

/** In the order of the README. */
const order = ['zone', 'cup', 'bucket', 'invite'] as const;

/** A keeper's first steps in a new studio. Each stays until it is done. */
export class FirstSteps {
  readonly element = h('section', { class: 'steps', 'aria-label': words.steps.title, hidden: true });
  readonly #open: (step: WireStep) => void;
  #steps: WireStudio['steps'];

  constructor(open: (step: WireStep) => void) {
    this.#open = open;
  }

  isLeft(step: WireStep): boolean {
    return this.#steps?.[step] === false;
  }

  show(steps: WireStudio['steps']): void {
    this.#steps = steps;
    this.element.hidden = steps === undefined;
    if (!steps) return;
    const next = order.find((step) => !steps[step]);
    this.element.replaceChildren(
      h('h2', {}, words.steps.title),
      h('ol', {}, ...order.map((step) => h('li', {}, ...this.#row(step, steps[step], step === next)))),
    );
  }

  #row(step: WireStep, done: boolean, isNext: boolean): Node[] {
    const { name, about } = words.steps[step];
    if (done)
      return [h('p', { class: 'done' }, name, h('span', { class: 'unseen' }, ` ${words.steps.done}`))];
    const press = button(name, () => this.#open(step), { class: isNext ? 'stamp' : 'stamp quiet' });
    return isNext ? [press, h('small', {}, about)] : [press];
  }
}
