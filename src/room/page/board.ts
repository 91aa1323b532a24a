import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WireBoard } from '../wire.ts';
import { boardCard, type BoardCard } from './boardCard.ts';
import { serverNow, setServerTime } from './browser/clock.ts';
import { h, remember } from './browser/dom.ts';
import { get } from './browser/net.ts';
import { agoText, clockText, setZone } from './text.ts';

const every = 5_000;
const { board: w } = words;

const token = /^#([\w-]{43})$/.exec(location.hash)?.[1];

const look = remember.get('room.look');
if (look !== undefined) document.documentElement.dataset['look'] = look;

const studio = h('h1', {});
const ready = h('p', { class: 'ready' });
const clock = h('p', { class: 'clock' });
const note = h('p', { class: 'note', role: 'status' });
const list = h('ul', { class: 'buckets' });
document.body.classList.add('wall');
document.body.append(
  h(
    'main',
    {},
    h('header', {}, studio, ready, note, clock, h('a', { href: '/', class: 'to-room' }, w.room)),
    list,
  ),
);

let lastServerTime: number | undefined;
const cards = new Map<number, BoardCard>();

/** Chooses the number of columns that allows the largest text. */
const fit = (shown: readonly BoardCard[]) => {
  const count = shown.length;
  const { clientWidth, clientHeight } = document.documentElement;
  const narrow = clientWidth < 700;
  const size = (columns: number) =>
    Math.min(clientWidth / columns / 1.8, clientHeight / Math.ceil(count / columns));
  const columns = narrow
    ? 1
    : Array.from({ length: count }, (_, i) => i + 1).reduce(
        (best, one) => (size(one) > size(best) ? one : best),
        1,
      );
  list.style.setProperty('--columns', String(columns));
  list.style.setProperty('--rows', String(Math.max(1, Math.ceil(count / columns))));
  list.classList.toggle('narrow', narrow);
  for (const card of shown) card.fit();
};

const show = (board: WireBoard) => {
  setServerTime(board.now);
  setZone(board.zone);
  lastServerTime = board.now;
  studio.textContent = board.studio;
  ready.textContent =
    board.buckets.length === 0
      ? w.noBuckets
      : w.ready(board.buckets.filter(({ step }) => step === 'use').length, board.buckets.length);
  clock.textContent = clockText(board.now);
  note.textContent = '';
  const shown = board.buckets.map((bucket) => {
    const card = cards.get(bucket.no) ?? boardCard();
    cards.set(bucket.no, card);
    card.show(bucket);
    return card;
  });
  if (shown.length !== list.childElementCount || shown.some(({ element }, i) => list.children[i] !== element))
    list.replaceChildren(...shown.map(({ element }) => element));
  fit(shown);
};

const refresh = async () => {
  const answer = await get<WireBoard>(
    '/api/board',
    token === undefined ? {} : { authorization: `Bearer ${token}` },
  );
  setTimeout(() => void refresh(), every);
  if (answer.ok) show(answer.value);
  else if (answer.status === 401) note.textContent = w.signIn;
  else if (lastServerTime !== undefined && serverNow() - lastServerTime > 15_000)
    note.textContent = w.stale(agoText(lastServerTime));
};

addEventListener('resize', () => fit([...cards.values()].filter(({ element }) => element.isConnected)));
void refresh();
