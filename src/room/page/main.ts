import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WireAction, WireLeaf, WireMe, WirePost, WireStart, WireText } from '../wire.ts';
import { phoneNow, setServerTime } from './clock.ts';
import { compose } from './compose.ts';
import { button, h } from './dom.ts';
import { openInvite, openSettings, restoreLook } from './settingsSheet.ts';
import { openForm } from './form.ts';
import { jobGrid, nameOf } from './jobs.ts';
import { joinView } from './join.ts';
import { openLive } from './live.ts';
import { get } from './net.ts';
import { Outbox } from './outbox.ts';
import { startRecent } from './recent.ts';
import { Stream } from './stream.ts';
import { agoText, clockDiffers, keepTimesFresh, setZone } from './text.ts';
import type { Waiting } from './waitingLines.ts';

const show = (...views: Node[]) => {
  for (const old of document.body.querySelectorAll('.view')) old.remove();
  const view = h('div', { class: 'view' }, ...views);
  document.body.append(view);
};

const top = (start: WireStart, me: WireMe, state: HTMLElement): HTMLElement =>
  h(
    'header',
    { class: 'top' },
    h('h1', {}, start.studio),
    state,
    h('a', { class: 'stamp quiet', href: '/board' }, words.wall),
    button(h('bdi', {}, me.name), () => openSettings(me, start.open), {
      class: 'stamp quiet me',
      'aria-haspopup': 'dialog',
    }),
    clockDiffers() && h('p', { class: 'zone' }, words.zone(start.zone)),
  );

const enter = (start: WireStart, ended = false): void => {
  setServerTime(start.now);
  setZone(start.zone);
  const { me } = start;
  startRecent(me?.member);
  document.title = start.studio;
  if (me) showRoom(start, me);
  else show(joinView(start, enter, ended));
};

/** The first jobs of a keeper in an empty studio. */
const firstSteps = ['studio set', 'studio vessel', 'bucket add'];

const showRoom = (start: WireStart, me: WireMe): void => {
  const open = (leaf: WireLeaf, typed: Record<string, string> = {}, trouble?: WireText) =>
    openForm(leaf, { typed, trouble }, (sending) => outbox.add(sending));
  const press = ({ press: how, line, path, typed }: WireAction, { no, reply: { kind, title } }: WirePost) => {
    const leaf = start.commands.find((one) => one.path.join(' ') === path.join(' '));
    if (how === 'edit' && leaf) open(leaf, typed, kind === 'refusal' ? title : undefined);
    else outbox.add({ line, pressed: no });
  };
  const state = h('p', { class: 'state-of', role: 'status' });
  const begin = start.commands.filter(
    ({ path }) => start.bare === true && firstSteps.includes(path.join(' ')),
  );
  const stream = new Stream({
    me: me.member,
    commands: start.commands,
    press,
    begin: begin.map((leaf) => button(nameOf(leaf), () => open(leaf), { class: 'stamp quiet' })),
  });
  const waiting = (item: Waiting) => {
    const { id, held, since } = item;
    if (!held) return stream.wait(item, words.waiting);
    const isOld = held.why === 'too-old';
    const again = button(isOld ? words.sendOld : words.again, () => outbox.again(item), { class: 'stamp' });
    const drop = button(words.drop, () => outbox.drop(id), { class: 'stamp quiet' });
    const why = isOld ? words.tooOld(agoText(since, phoneNow())) : `${words.notSent}: ${held.said}`;
    stream.wait(item, why, [again, drop]);
  };
  const outbox = new Outbox({
    member: me.member,
    waiting,
    sent: (post) => stream.show(post),
    dropped: (id) => stream.forgetWaiting(id),
    signedOut: () => void whetherSignedOut(),
  });
  const whetherSignedOut = async () => {
    const answer = await get<WireStart>('/api/start');
    // Somebody else may have signed in in another tab.
    if (!answer.ok || answer.value.me?.member === me.member) return;
    live.close();
    outbox.close();
    enter(answer.value, answer.value.me === undefined);
  };
  const connection = (isOpen: boolean) => {
    state.textContent = isOpen ? words.live : words.offline;
    state.classList.toggle('off', !isOpen);
    if (isOpen) void outbox.go();
  };
  show(
    button(words.skip, () => document.getElementById('line')?.focus(), { class: 'stamp skip' }),
    top(start, me, state),
    stream.element,
    h(
      'footer',
      { class: 'bench' },
      stream.newestButton,
      jobGrid({
        commands: start.commands,
        chores: me.keeper
          ? [{ name: words.door.invite, about: words.door.inviteAbout, open: openInvite }]
          : [],
        open: (leaf) => open(leaf),
      }),
      compose((line) => outbox.add({ line })),
    ),
  );
  for (const post of start.posts) stream.show(post);
  for (const item of outbox.mine()) waiting(item);
  stream.toNewest();
  const live = openLive({
    last: () => stream.last(),
    post: (post) => stream.show(post),
    state: connection,
    cut: () => void whetherSignedOut(),
  });
  addEventListener('online', () => live.again());
  addEventListener('offline', () => connection(false));
  void outbox.go();
};

restoreLook();
keepTimesFresh();
// The server that wrote this JSON has the same version as this script.
enter(JSON.parse(document.getElementById('start')?.textContent ?? '{}') as WireStart);
