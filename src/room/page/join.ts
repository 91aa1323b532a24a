import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WireStart } from '../wire.ts';
import { h } from './browser/dom.ts';
import { post } from './browser/net.ts';

const input = (id: string, label: string, props: Record<string, string | number | boolean>, about?: string) =>
  h(
    'div',
    { class: 'field' },
    h('label', { class: 'about', for: id }, label),
    h('input', {
      id,
      name: id,
      required: true,
      maxlength: 200,
      ...(about !== undefined && { 'aria-describedby': `${id}-about` }),
      ...props,
    }),
    about !== undefined && h('small', { id: `${id}-about` }, about),
  );

interface Invitation {
  code: string;
  keeper: boolean;
}

/** Reads an invitation code from the address and removes it from there at once. */
export const invitation = (): Invitation => {
  const [, purpose, code = ''] = /^#(join|keeper)=([\w-]{43})$/.exec(location.hash) ?? [];
  if (location.hash !== '') history.replaceState(null, '', location.pathname);
  return { code, keeper: purpose === 'keeper' };
};

/** The sign-in form: a name in the demo; otherwise the studio's passcode, a name, and a password of one's own. */
export const joinView = (
  { studio, open }: WireStart,
  { code: invitedBy, keeper }: Invitation,
  { entered, ended }: { entered(start: WireStart): void; ended: boolean },
): HTMLElement => {
  const { join } = words;
  let code = invitedBy;
  const trouble = h('p', { class: 'trouble', role: 'alert' });
  const role = (value: string, label: string, checked: boolean) =>
    h('label', { class: 'choice' }, h('input', { type: 'radio', name: 'role', value, checked }), label);
  const passcode = h(
    'div',
    { hidden: open || code !== '' },
    input('passcode', join.passcode, {
      required: false,
      autocomplete: 'off',
      autocapitalize: 'off',
      spellcheck: 'false',
    }),
  );
  const invited = h('p', { class: 'invited', role: 'status' }, keeper ? join.keeperInvited : join.invited);
  invited.hidden = code === '';
  /** An invitation that was used leads on to the other ways in. */
  const usedUp = () => {
    code = '';
    invited.textContent = keeper ? join.keeperUsed : join.used;
    invited.className = 'trouble';
    passcode.hidden = false;
  };
  if (code !== '')
    void post<{ holds: boolean }>('/api/invitation', { code, keeper }).then((answer) => {
      if (answer.ok && !answer.value.holds) usedUp();
    });
  const form = h(
    'form',
    {
      class: 'form',
      submit: (event) => {
        event.preventDefault();
        void enter();
      },
    },
    ended && h('p', { class: 'trouble' }, join.ended),
    h('p', { class: 'lead' }, open ? join.demo : join.first),
    invited,
    passcode,
    input('name', join.name, {
      autocomplete: open ? 'off' : 'username',
      maxlength: 40,
      autocapitalize: 'words',
    }),
    !open &&
      input(
        'secret',
        join.secret,
        { type: 'password', autocomplete: 'current-password', minlength: 8 },
        join.secretAbout,
      ),
    open &&
      h(
        'div',
        { class: 'choices roles', role: 'radiogroup', 'aria-label': join.role },
        role('member', join.asMember, true),
        role('keeper', join.asKeeper, false),
      ),
    trouble,
    h('button', { type: 'submit', class: 'stamp main' }, join.enter),
  );
  const enter = async () => {
    trouble.textContent = '';
    const filled = new FormData(form);
    const text = (name: string) => {
      const value = filled.get(name);
      return typeof value === 'string' ? value : '';
    };
    const answer = await post<WireStart>('/api/sign-in', {
      name: text('name'),
      secret: text('secret'),
      passcode: text('passcode'),
      code,
      keeper: text('role') === 'keeper',
    });
    if (answer.ok) entered(answer.value);
    else if (answer.why === 'code-used' && code !== '') usedUp();
    else if (answer.status === 0) trouble.textContent = join.trouble;
    else if (answer.seconds === undefined) trouble.textContent = answer.said;
    else trouble.textContent = join.seconds(answer.said, answer.seconds);
  };
  return h('main', { class: 'join' }, h('div', { class: 'gate' }, h('h1', {}, join.welcome(studio)), form));
};
