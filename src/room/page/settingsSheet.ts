import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WireMe } from '../wire.ts';
import { button, choiceGroup, h, remember, svg } from './browser/dom.ts';
import { openSheet } from './lightbox.ts';
import { get, post } from './browser/net.ts';

const { door } = words;

const setLook = (look: 'auto' | 'light' | 'dark'): void => {
  const { dataset } = document.documentElement;
  if (look === 'auto') delete dataset['look'];
  else dataset['look'] = look;
  remember.set('room.look', look === 'auto' ? undefined : look);
};

/** Applies the light or dark theme that was chosen on this phone. */
export const restoreLook = (): void => {
  const look = remember.get('room.look');
  if (look === 'light' || look === 'dark') setLook(look);
};

const looks = (): HTMLElement => {
  const all = (['auto', 'light', 'dark'] as const).map((look) => ({ name: door.looks[look], value: look }));
  const now = document.documentElement.dataset['look'] ?? 'auto';
  return choiceGroup(all, now, setLook, { 'aria-label': door.sound });
};

const code = (size: number, dark: string): SVGElement => {
  const path = [...dark]
    .map((one, i) => (one === '1' ? `M${i % size} ${Math.floor(i / size)}h1v1h-1z` : ''))
    .join('');
  return svg(
    'svg',
    {
      class: 'code',
      viewBox: `-3 -3 ${size + 6} ${size + 6}`,
      role: 'img',
      'aria-label': door.qr,
      'shape-rendering': 'crispEdges',
    },
    svg('rect', { x: -3, y: -3, width: size + 6, height: size + 6, fill: '#fff' }),
    svg('path', { d: path, fill: '#000' }),
  );
};

const section = (title: string, ...content: (Node | string)[]): HTMLElement =>
  h('section', {}, h('h3', {}, title), ...content);

const fetchingButton = (label: string, work: () => Promise<Node[]>): HTMLElement => {
  const place = h('div', { class: 'fetched', role: 'status' });
  return h(
    'div',
    {},
    button(label, () => void work().then((made) => place.replaceChildren(...made)), { class: 'stamp quiet' }),
    place,
  );
};

const address = async (path: string, about: string): Promise<Node[]> => {
  const answer = await post<{ url: string; size: number; dark: string }>(path, {});
  if (!answer.ok) return [h('p', {}, answer.said)];
  const { url, size, dark } = answer.value;
  const onlyHere = ['127.0.0.1', 'localhost', '[::1]'].includes(new URL(url).hostname);
  return [
    h('p', {}, about),
    onlyHere ? h('p', { class: 'trouble' }, door.onlyHere) : code(size, dark),
    h('p', { class: 'address' }, url),
  ];
};

const invitation = () => address('/api/door/invite', door.inviteAbout);

export const openInvite = (): void => {
  const place = h('div', { class: 'fetched', role: 'status' });
  const made = () => void invitation().then((nodes) => place.replaceChildren(...nodes));
  openSheet(door.invite, place, button(door.another, made, { class: 'stamp quiet' }));
  made();
};

const passcode = (): HTMLElement => {
  const status = h('p', { role: 'status' });
  const input = h('input', { id: 'new-passcode', minlength: 8, maxlength: 200, autocomplete: 'off' });
  const end = h('input', { id: 'end-sessions', type: 'checkbox' });
  return h(
    'form',
    {
      class: 'inline',
      submit: (event) => {
        event.preventDefault();
        void post('/api/door/passcode', { passcode: input.value, end: end.checked }).then((answer) => {
          const saved = end.checked ? door.passcodeSavedAlone : door.passcodeSaved;
          status.textContent = answer.ok ? saved : answer.said;
        });
      },
    },
    h('label', { class: 'about', for: 'new-passcode' }, door.passcode),
    h('div', { class: 'measured' }, input, h('button', { type: 'submit', class: 'stamp quiet' }, door.save)),
    h('label', { for: 'end-sessions' }, end, ' ', door.endOthers),
    status,
  );
};

interface Name {
  name: string;
  claimed: boolean;
  here: boolean;
}

const names = async (me: WireMe): Promise<HTMLElement> => {
  const answer = await get<Name[]>('/api/door/names');
  if (!answer.ok) return h('p', {}, answer.said);
  const row = ({ name, claimed, here }: Name): HTMLElement => {
    const state = h('small', {}, claimed ? '' : here ? door.released : door.elsewhere);
    const release = button(
      door.release(name),
      () => {
        if (release.textContent !== door.releaseSure(name)) {
          release.textContent = door.releaseSure(name);
          return;
        }
        void post('/api/door/release', { name }).then((done) => {
          state.textContent = done.ok ? door.released : done.said;
          release.remove();
        });
      },
      { class: 'stamp quiet' },
    );
    return h('li', {}, h('bdi', {}, name), state, name !== me.name && (claimed || !here) && release);
  };
  return h('ul', { class: 'names' }, ...answer.value.map(row));
};

const leave = (everywhere: boolean) => post('/api/sign-out', { everywhere }).then(() => location.reload());

export const openSettings = (me: WireMe, open: boolean): void => {
  const rooms = h('div', {});
  openSheet(
    door.title,
    h('p', { class: 'lead' }, door.signedInAs(me.name, me.keeper)),
    section(door.sound, looks()),
    h(
      'div',
      { class: 'actions' },
      button(door.signOut, () => void leave(false), { class: 'stamp quiet' }),
      !open && button(door.everywhere, () => void leave(true), { class: 'stamp quiet' }),
    ),
    rooms,
  );
  if (!me.keeper) return;
  rooms.append(
    fetchingButton(door.invite, invitation),
    fetchingButton(door.wall, () => address('/api/door/wall', door.wallAbout)),
  );
  if (open) return;
  rooms.append(passcode(), h('section', {}, h('h3', {}, door.names), h('p', {}, door.namesAbout)));
  void names(me).then((list) => rooms.append(list));
};
