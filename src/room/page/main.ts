import { notebookPageWords as notebook } from '../../words/platform/notebookPageWords.ts';
import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WireAction, WireLeaf, WireMe, WirePost, WireStart, WireStudio, WireText } from '../wire.ts';
import { phoneNow, setServerTime } from './browser/clock.ts';
import { openLinkedBucket } from './bucketLink.ts';
import { compose } from './compose.ts';
import { button, h } from './browser/dom.ts';
import { openInvite, openSettings, restoreLook } from './settingsSheet.ts';
import { FirstSteps } from './firstSteps.ts';
import { openForm } from './form.ts';
import { jobGrid, leafOf } from './jobs.ts';
import { invitation, joinView } from './join.ts';
import { openLive } from './browser/live.ts';
import { get } from './browser/net.ts';
import { openNotebook } from './notebook.ts';
import { Outbox } from './outbox.ts';
import { startRecent } from './recent.ts';
import { Round } from './round.ts';
import { Stream } from './stream.ts';
import { agoText, clockDiffers, keepTimesFresh, setZone } from './text.ts';
import type { Sending, Waiting } from './waitingLines.ts';

const show = (...views: (Node | undefined)[]) => {
  for (const old of document.body.querySelectorAll('.view')) old.remove();
  const view = h('div', { class: 'view' }, ...views);
  document.body.append(view);
};

const top = (start: WireStart, me: WireMe, state: HTMLElement) => {
  const name = h('h1', {});
  const zone = h('p', { class: 'zone' });
  const element = h(
    'header',
    { class: 'top' },
    name,
    state,
    h('a', { class: 'stamp quiet', href: '/board' }, words.wall),
    button(h('bdi', {}, me.name), () => openSettings(me, start.open), {
      class: 'stamp quiet me',
      'aria-haspopup': 'dialog',
    }),
    zone,
  );
  const show = (studio: WireStudio) => {
    name.textContent = studio.studio;
    document.title = studio.studio;
    setZone(studio.zone);
    zone.textContent = words.zone(studio.zone);
    zone.hidden = !clockDiffers();
  };
  show(start);
  return { element, show };
};

const enter = (start: WireStart, ended = false): void => {
  setServerTime(start.now);
  setZone(start.zone);
  const { me } = start;
  startRecent(me?.member);
  document.title = start.studio;
  const invited = invitation();
  if (me) showRoom(start, me);
  else show(joinView(start, invited, { entered: enter, ended }));
};

/** Whether the studio may have another name or zone after this. */
const setsStudio = ({ did, reply: { tookBack = [] } }: WirePost): boolean =>
  did?.path[0] === 'studio' || tookBack.some((entry) => entry.startsWith('s-'));

const showRoom = (start: WireStart, me: WireMe): void => {
  const open = (leaf: WireLeaf, typed: Record<string, string> = {}, trouble?: WireText) =>
    openForm(leaf, { typed, trouble }, (sending) => send(sending));
  const send = (sending: Sending) => {
    // The answer is in the room.
    round.open(false);
    outbox.add(sending);
  };
  const press = ({ press: how, line, path, typed }: WireAction, { no, reply: { kind, title } }: WirePost) => {
    const leaf = leafOf(start.commands, path.join(' '));
    if (how === 'edit' && leaf) open(leaf, typed, kind === 'refusal' ? title : undefined);
    else outbox.add({ line, pressed: no });
  };
  const state = h('p', { class: 'state-of', role: 'status' });
  const header = top(start, me, state);
  // Until a zone is set, the phone's is filled in.
  const begin = (leaf: WireLeaf) =>
    open(
      leaf,
      leaf.path.join(' ') === 'studio set' && steps.isLeft('zone')
        ? { zone: new Intl.DateTimeFormat().resolvedOptions().timeZone }
        : {},
    );
  const job = (path: string) => {
    const leaf = leafOf(start.commands, path);
    if (leaf) begin(leaf);
  };
  const steps = new FirstSteps((step) => {
    if (step === 'zone') job('studio set');
    else if (step === 'cup') job('studio vessel');
    else if (step === 'bucket') job('bucket add');
    else openInvite();
  });
  steps.show(start.steps);
  const refresh = async () => {
    const answer = await get<WireStudio>('/api/studio');
    if (!answer.ok) return;
    header.show(answer.value);
    steps.show(answer.value.steps);
  };
  const heard = (post: WirePost) => {
    stream.show(post);
    round.heard(post);
    const stepDone = !steps.element.hidden && post.did?.path[0] === 'bucket';
    if (post.reply.kind === 'answer' && (setsStudio(post) || stepDone)) void refresh();
  };
  const stream = new Stream({
    me: me.member,
    commands: start.commands,
    press,
    steps: steps.element,
    quiet: start.bare === true ? (me.keeper ? '' : words.noBuckets) : words.quiet,
  });
  const round = new Round({
    me: me.member,
    keeper: me.keeper && start.bare !== true,
    run: (line) => outbox.add({ line }),
    edit: ({ path, typed }) => {
      const leaf = leafOf(start.commands, path.join(' '));
      if (leaf) open(leaf, typed);
    },
    room: stream.element,
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
    sent: heard,
    dropped: (id) => stream.forgetWaiting(id),
    signedOut: () => void whetherSignedOut(),
  });
  const whetherSignedOut = async () => {
    const answer = await get<WireStart>('/api/start');
    // Somebody else may have signed in in another tab.
    if (!answer.ok || answer.value.me?.member === me.member) return;
    live.close();
    round.close();
    outbox.close();
    enter(answer.value, answer.value.me === undefined);
  };
  // A guest who has come in is the last step; while the stream was away, one may have come unheard.
  const arrived = () => {
    if (steps.element.checkVisibility()) void refresh();
  };
  const connection = (isOpen: boolean) => {
    state.textContent = isOpen ? words.live : words.offline;
    state.classList.toggle('off', !isOpen);
    if (!isOpen) return;
    void outbox.go();
    arrived();
  };
  show(
    button(words.skip, () => document.getElementById('line')?.focus(), { class: 'stamp skip' }),
    header.element,
    round.tabs,
    round.element,
    stream.element,
    h(
      'footer',
      { class: 'bench' },
      stream.newestButton,
      jobGrid({
        commands: start.commands,
        chores: me.keeper
          ? [
              { name: words.door.invite, about: words.door.inviteAbout, open: openInvite },
              { name: notebook.title, about: notebook.about, open: openNotebook },
            ]
          : [],
        open: (leaf) => (leaf.atOnce ? send({ path: leaf.path, typed: {} }) : begin(leaf)),
      }),
      compose((line) => send({ line })),
    ),
  );
  void round.look();
  for (const post of start.posts) {
    stream.told(post);
    stream.show(post);
  }
  for (const item of outbox.mine()) waiting(item);
  stream.toNewest();
  const live = openLive({
    last: () => stream.last(),
    post: (post) => {
      stream.told(post);
      heard(post);
    },
    state: connection,
    arrived,
    cut: () => void whetherSignedOut(),
  });
  addEventListener('online', () => live.again());
  addEventListener('offline', () => connection(false));
  void outbox.go();
  void openLinkedBucket({
    commands: start.commands,
    openForm: (leaf, given) => openForm(leaf, given, (sending) => outbox.add(sending)),
    send: (line) => outbox.add({ line }),
  });
};

restoreLook();
keepTimesFresh();
// The server that wrote this JSON has the same version as this script.
enter(JSON.parse(document.getElementById('start')?.textContent ?? '{}') as WireStart);
