import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WireBoard, WireBucket } from '../wire.ts';
import { serverNow, setServerTime } from './clock.ts';
import { h, remember } from './dom.ts';
import { get } from './net.ts';
import { gravityScale } from './scale.ts';
import { agoText, clockText, nodes, setZone } from './text.ts';

const every = 5_000;
const { board: w } = words;

const token = /^#([\w-]{43})$/.exec(location.hash)?.[1];

const look = remember.get('room.look');
if (look !== undefined) document.documentElement.dataset['look'] = look;

const gravityLine = ({ gravity, window }: WireBucket): HTMLElement => {
  const value = gravity ? gravity.value.toFixed(2) : words.board.noReading;
  const label = window ? w.gravity(value, window.low.toFixed(2), window.high.toFixed(2)) : value;
  const scale = gravityScale({ gravity, window }, label);
  return h(
    'div',
    { class: 'gravity' },
    h('b', {}, value, gravity && !gravity.believed ? h('small', {}, ` ${w.unbelieved}`) : undefined),
    scale,
    window ? h('small', { class: 'of' }, w.window(window.low.toFixed(2), window.high.toFixed(2))) : undefined,
  );
};

const cell = (bucket: WireBucket): HTMLElement =>
  h(
    'li',
    { class: 'bucket', 'data-step': bucket.step },
    h(
      'div',
      { class: 'head' },
      h('span', { class: 'no' }, String(bucket.no)),
      h('h2', {}, h('bdi', {}, bucket.name)),
      h(
        'span',
        { class: 'stirred' },
        bucket.stirredAt === undefined ? w.neverStirred : w.stirred(agoText(bucket.stirredAt)),
      ),
    ),
    h('p', { class: 'state' }, bucket.stepName),
    gravityLine(bucket),
    h('p', { class: 'needs' }, ...nodes(bucket.needs)),
  );

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

let heard: number | undefined;

/** As many columns as leave the words in the cells largest. */
const fit = (count: number) => {
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
};

const show = (board: WireBoard) => {
  setServerTime(board.now);
  setZone(board.zone);
  heard = board.now;
  studio.textContent = board.studio;
  ready.textContent =
    board.buckets.length === 0
      ? w.noBuckets
      : w.ready(board.buckets.filter(({ step }) => step === 'use').length, board.buckets.length);
  clock.textContent = clockText(board.now);
  note.textContent = '';
  list.replaceChildren(...board.buckets.map(cell));
  fit(board.buckets.length);
};

const refresh = async () => {
  const answer = await get<WireBoard>(
    '/api/board',
    token === undefined ? {} : { authorization: `Bearer ${token}` },
  );
  setTimeout(() => void refresh(), every);
  if (answer.ok) show(answer.value);
  else if (answer.status === 401) note.textContent = w.signIn;
  else if (heard !== undefined && serverNow() - heard > 15_000) note.textContent = w.stale(agoText(heard));
};

addEventListener('resize', () => fit(list.childElementCount));
void refresh();
