import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { Did, WireAction, WireLeaf, WirePost, WireReply, WireText } from '../wire.ts';
import { button, h } from './browser/dom.ts';
import { inWords } from './inWords.ts';
import { facts } from './facts.ts';
import { leafOf } from './jobs.ts';
import { openFile, picture } from './lightbox.ts';
import { actionButton, pressBar } from './pressBar.ts';
import type { Waiting } from './waitingLines.ts';
import { nodes, stamp } from './text.ts';

interface Context {
  me: string;
  commands: WireLeaf[];
  press(action: WireAction, of: WirePost): void;
}

const list = (texts: WireText[], mark: string, label: string): HTMLElement | undefined =>
  texts.length === 0
    ? undefined
    : h(
        'ul',
        { class: mark, 'aria-label': label },
        ...texts.map((text) => h('li', {}, h('b', { class: 'unseen' }, label), ' ', ...nodes(text))),
      );

const lines = (texts: WireText[]) => texts.map((text) => h('li', {}, ...nodes(text)));

/** A verdict's reasons are folded away; other replies' reasons are what was asked for, so they are open. */
const reasons = ({ reasons: all, step }: WireReply): HTMLElement | undefined =>
  all.length === 0
    ? undefined
    : step === undefined
      ? h('ul', { class: 'told' }, ...lines(all))
      : h('details', { class: 'why' }, h('summary', {}, words.why), h('ul', {}, ...lines(all)));

const actions = (
  post: WirePost,
  offered: readonly WireAction[],
  { press, commands }: Context,
): HTMLElement | undefined => {
  // A public answer to a keeper may offer what only keepers may do.
  const all = offered.filter(({ path }) => path.length === 0 || leafOf(commands, path.join(' ')));
  if (all.length === 0) return undefined;
  const bar = pressBar(
    all,
    (action) => press(action, post),
    (action) => action.press === 'run',
  );
  // On a small phone only the first row stays in sight: the rest may lie below.
  new ResizeObserver(() => {
    const first = bar.firstElementChild?.getBoundingClientRect().height ?? 0;
    bar.style.setProperty('--rest', `${Math.max(0, bar.clientHeight - first - 12)}px`);
  }).observe(bar);
  return bar;
};

const logged = (post: WirePost, mine: boolean, { press }: Context): HTMLElement | undefined => {
  if (!post.reply.logged) return undefined;
  const { text, undo } = post.reply.logged;
  const said = h('span', {}, ...nodes(text));
  if (!mine || !undo) return h('p', { class: 'logged' }, said);
  const pressed = () => {
    slip.disabled = true;
    press(undo, post);
  };
  const slip = actionButton(undo, pressed, 'slip');
  return h('p', { class: 'logged' }, said, slip);
};

interface Spoken {
  line: string;
  did?: Did;
  at: number | undefined;
}

/** Who said what, in words; a line that is no command, as it was typed. */
const said = (
  name: string,
  { line, did, at }: Spoken,
  { commands }: Pick<Context, 'commands'>,
): HTMLElement =>
  h(
    'p',
    { class: 'said' },
    h('bdi', { class: 'who' }, name),
    at === undefined ? undefined : stamp(at),
    did
      ? h('bdi', { class: 'did', title: line }, inWords(did, leafOf(commands, did.path.join(' '))))
      : line !== '' && h('code', { dir: 'auto' }, line),
  );

/** A file to save; a sheet can be looked at and printed too. */
const file = (no: number, name: string, key = ''): HTMLElement => {
  const href = `/api/post/${no}/file?key=${key}`;
  return h(
    'div',
    { class: 'actions' },
    name.endsWith('.html') && button(words.openSheet, () => openFile(href, name), { class: 'stamp' }),
    h('a', { class: 'stamp quiet', href, download: name }, words.file(name)),
  );
};

export const tile = (post: WirePost, context: Context): HTMLElement => {
  const { reply, no } = post;
  const mine = post.member === context.me;
  const who = post.line === '' ? words.reminder : mine ? words.you : post.name;
  return h(
    'article',
    {
      class: ['tile', reply.kind, post.private ? 'private' : '', mine ? 'mine' : ''].join(' ').trim(),
      'data-no': no,
      'data-id': post.id,
      'data-step': reply.step,
      'data-entry': reply.logged?.entry,
      'data-bucket': reply.bucket,
      'data-said': post.at,
    },
    said(who, post, context),
    h(
      'div',
      { class: 'body' },
      reply.stepName || post.private
        ? h(
            'p',
            { class: 'tags' },
            reply.stepName ? h('span', { class: 'step' }, reply.stepName) : undefined,
            post.private ? h('span', { class: 'only' }, words.onlyYou) : undefined,
          )
        : undefined,
      h('h2', {}, ...nodes(reply.title)),
      logged(post, mine, context),
      facts(reply.facts, (presses) => actions(post, presses, context)),
      list(reply.dont, 'dont', words.dont),
      list(reply.cautions, 'cautions', words.careful),
      reply.chart === undefined ? undefined : picture(no, reply.chart),
      reply.file === undefined ? undefined : file(no, reply.file, reply.fileKey),
      // Why a verdict is so stands below what to press; the reasons of other replies are what was asked for.
      ...(reply.step === undefined
        ? [reasons(reply), actions(post, reply.actions, context)]
        : [actions(post, reply.actions, context), reasons(reply)]),
    ),
  );
};

/** A post's entry was taken back: it is struck through, and nothing of it is pressed any more. */
export const strike = (tile: HTMLElement): void => {
  if (tile.classList.contains('taken-back')) return;
  tile.classList.add('taken-back');
  tile.querySelector('.actions')?.remove();
  const slip = tile.querySelector('.slip');
  const note = h('span', { class: 'note' }, words.takenBack);
  if (slip) slip.replaceWith(note);
  else tile.querySelector('.logged')?.append(note);
};

const typedLine = ({ path, typed }: Did): string =>
  `/${path.join(' ')} ${Object.entries(typed)
    .map(([name, value]) => `${name}:${value}`)
    .join(' ')}`;

/** A line that has no answer yet, or was refused before it ran. */
export const waitingTile = (
  item: Waiting,
  note: string,
  { presses = [], commands }: { presses?: HTMLElement[] | undefined } & Pick<Context, 'commands'>,
): HTMLElement =>
  h(
    'article',
    { class: 'tile mine waiting', 'data-id': item.id },
    said(
      words.you,
      'line' in item
        ? { line: item.line, at: undefined }
        : { line: typedLine(item), did: item, at: undefined },
      { commands },
    ),
    h(
      'div',
      { class: 'body' },
      h('p', { class: 'note' }, note),
      presses.length > 0 && h('div', { class: 'actions' }, ...presses),
    ),
  );
