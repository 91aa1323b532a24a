import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WireAction, WirePost, WireReply, WireText } from '../wire.ts';
import { button, h } from './dom.ts';
import { picture } from './lightbox.ts';
import type { Waiting } from './waitingLines.ts';
import { nodes, stamp } from './text.ts';

interface Context {
  me: string;
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

const long = (text: WireText): boolean =>
  text.reduce((sum, part) => sum + (typeof part === 'string' ? part.length : 8), 0) > 44;

const facts = (post: WirePost, all: WireReply['facts'], context: Context): HTMLElement | undefined =>
  all.length === 0
    ? undefined
    : h(
        'dl',
        { class: all.length > 5 || all.some(({ text }) => long(text)) ? 'facts long' : 'facts' },
        ...all.map(({ label, text, presses = [] }) =>
          h(
            'div',
            {},
            h('dt', {}, ...nodes(label)),
            h('dd', {}, ...nodes(text), actions(post, presses, context)),
          ),
        ),
      );

const lines = (texts: WireText[]) => texts.map((text) => h('li', {}, ...nodes(text)));

/** A verdict's reasons are folded away; other replies' reasons are what was asked for, so they are open. */
const reasons = ({ reasons: all, step }: WireReply): HTMLElement | undefined =>
  all.length === 0
    ? undefined
    : step === undefined
      ? h('ul', { class: 'told' }, ...lines(all))
      : h('details', { class: 'why' }, h('summary', {}, words.why), h('ul', {}, ...lines(all)));

const actions = (post: WirePost, all: readonly WireAction[], { press }: Context): HTMLElement | undefined => {
  if (all.length === 0) return undefined;
  const bar = h('div', { class: 'actions' });
  for (const action of all) {
    const pressed = button(
      h('span', {}, ...nodes(action.label)),
      () => {
        // A pressed button shows that it was pressed and is disabled, so that nobody sends it twice.
        if (action.press === 'run') for (const one of bar.querySelectorAll('button')) one.disabled = true;
        press(action, post);
      },
      { class: action.press === 'run' ? 'stamp' : 'stamp quiet' },
    );
    bar.append(pressed);
  }
  return bar;
};

/** What was logged, with an undo button for its author. */
const logged = (post: WirePost, mine: boolean, { press }: Context): HTMLElement | undefined => {
  if (!post.reply.logged) return undefined;
  const { text, undo } = post.reply.logged;
  const said = h('span', {}, ...nodes(text));
  if (!mine || !undo) return h('p', { class: 'logged' }, said);
  const slip = button(
    h('span', {}, ...nodes(undo.label)),
    () => {
      slip.disabled = true;
      press(undo, post);
    },
    { class: 'slip' },
  );
  return h('p', { class: 'logged' }, said, slip);
};

const said = (name: string, line: string, at: number | undefined): HTMLElement =>
  h(
    'p',
    { class: 'said' },
    h('bdi', { class: 'who' }, name),
    at === undefined ? undefined : stamp(at),
    line === '' ? undefined : h('code', { dir: 'auto' }, line),
  );

/** A post: a line and its answer. */
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
    },
    said(who, post.line, post.at),
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
      facts(post, reply.facts, context),
      list(reply.dont, 'dont', words.dont),
      list(reply.cautions, 'cautions', words.careful),
      reply.chart === undefined ? undefined : picture(no, reply.chart),
      reply.file === undefined
        ? undefined
        : h(
            'a',
            { class: 'stamp quiet', href: `/api/post/${no}/file`, download: reply.file },
            words.file(reply.file),
          ),
      reasons(reply),
      actions(post, reply.actions, context),
    ),
  );
};

export const lineOf = (item: Waiting): string =>
  'line' in item
    ? item.line
    : `/${item.path.join(' ')} ${Object.entries(item.typed)
        .map(([name, value]) => `${name}:${/\s/.test(value) ? `"${value}"` : value}`)
        .join(' ')}`;

/** A line that has no answer yet, or was refused before it ran. */
export const waitingTile = (item: Waiting, note: string, presses: HTMLElement[] = []): HTMLElement =>
  h(
    'article',
    { class: 'tile mine waiting', 'data-id': item.id },
    said(words.you, lineOf(item), undefined),
    h(
      'div',
      { class: 'body' },
      h('p', { class: 'note' }, note),
      presses.length > 0 && h('div', { class: 'actions' }, ...presses),
    ),
  );
