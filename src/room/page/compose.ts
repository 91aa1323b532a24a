import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import { button, h } from './browser/dom.ts';
import { post } from './browser/net.ts';

export const compose = (send: (line: string) => void): HTMLElement => {
  const offered = h('div', {
    class: 'completions',
    id: 'completions',
    role: 'listbox',
    'aria-label': words.completions,
    hidden: true,
  });
  let at = -1;
  let lastSent = '';
  let wanted = 0;
  const input = h('input', {
    id: 'line',
    type: 'text',
    autocomplete: 'off',
    autocapitalize: 'off',
    spellcheck: 'false',
    enterkeyhint: 'send',
    maxlength: 5000,
    placeholder: words.placeholder,
    'aria-label': words.write,
    role: 'combobox',
    'aria-autocomplete': 'list',
    'aria-controls': 'completions',
    'aria-expanded': 'false',
  });
  const choices = () => [...offered.children].filter((one): one is HTMLElement => one instanceof HTMLElement);
  const mark = (to: number) => {
    at = to;
    choices().forEach((one, i) => one.setAttribute('aria-selected', String(i === at)));
    const chosen = choices()[at];
    if (chosen) {
      input.setAttribute('aria-activedescendant', chosen.id);
      chosen.scrollIntoView({ block: 'nearest' });
    } else input.removeAttribute('aria-activedescendant');
  };
  const shut = () => {
    wanted += 1;
    offered.hidden = true;
    offered.replaceChildren();
    input.setAttribute('aria-expanded', 'false');
    mark(-1);
  };
  const complete = async () => {
    const line = input.value;
    const mine = (wanted += 1);
    if (line.trim() === '') return shut();
    const answer = await post<{ choices: string[]; end: string }>('/api/complete', { line });
    if (mine !== wanted || !answer.ok) return;
    const { choices: found, end } = answer.value;
    if (found.length === 0 || (found.length === 1 && found[0]?.trim() === end)) return shut();
    const whole = line.slice(0, line.length - end.length);
    offered.replaceChildren(
      ...found.slice(0, 12).map((text, i) =>
        h(
          'div',
          {
            id: `completion-${i}`,
            role: 'option',
            'aria-selected': 'false',
            class: 'completion',
            pointerdown: (event) => {
              event.preventDefault();
              take(whole + text);
            },
          },
          text,
        ),
      ),
    );
    offered.hidden = false;
    input.setAttribute('aria-expanded', 'true');
    at = -1;
  };
  const take = (line: string) => {
    input.value = /[:\s]$/.test(line) ? line : `${line} `;
    input.focus();
    void complete();
  };
  input.addEventListener('input', () => void complete());
  input.addEventListener('blur', shut);
  input.addEventListener('keydown', (event) => {
    const all = choices();
    const chosen = all[at];
    if (event.key === 'Escape') shut();
    else if (event.key === 'ArrowDown' && all.length > 0) mark((at + 1) % all.length);
    else if (event.key === 'ArrowUp' && input.value === '' && lastSent !== '') input.value = lastSent;
    else if (event.key === 'ArrowUp' && all.length > 0) mark(at <= 0 ? all.length - 1 : at - 1);
    else if ((event.key === 'Tab' || event.key === 'Enter') && chosen)
      chosen.dispatchEvent(new Event('pointerdown'));
    else return;
    event.preventDefault();
  });
  return h(
    'form',
    {
      class: 'compose',
      submit: (event) => {
        event.preventDefault();
        const line = input.value.trim();
        if (line === '') return;
        input.value = '';
        shut();
        lastSent = line;
        send(line);
      },
    },
    offered,
    input,
    button(words.send, () => undefined, { type: 'submit', class: 'stamp send' }),
  );
};
