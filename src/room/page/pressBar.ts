import type { WireAction } from '../wire.ts';
import { button, h } from './browser/dom.ts';
import { nodes } from './text.ts';

export const actionButton = (
  { label }: Pick<WireAction, 'label'>,
  press: () => void,
  kind: 'stamp' | 'stamp quiet' | 'slip',
): HTMLButtonElement => button(h('span', {}, ...nodes(label)), press, { class: kind });

/** Buttons for actions. One that runs disables them all, so that nobody sends it twice. */
export const pressBar = (
  actions: readonly WireAction[],
  press: (action: WireAction) => void,
  isMain: (action: WireAction) => boolean,
): HTMLElement => {
  const pressed = (action: WireAction) => {
    if (action.press === 'run') for (const one of bar.querySelectorAll('button')) one.disabled = true;
    press(action);
  };
  const bar = h(
    'div',
    { class: 'actions' },
    ...actions.map((one) => actionButton(one, () => pressed(one), isMain(one) ? 'stamp' : 'stamp quiet')),
  );
  return bar;
};
