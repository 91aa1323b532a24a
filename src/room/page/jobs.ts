import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WireLeaf } from '../wire.ts';
import { button, choiceGroup, h } from './browser/dom.ts';
import { openSheet } from './lightbox.ts';

/** The most common jobs first. One that this bot lacks is skipped. */
const commonest = [
  'water-or-stir',
  'reading',
  'added',
  'stirred',
  'coat on',
  'ask',
  'dip time',
  'fired',
  'sieved',
  'bucket list',
];
const many = 7;

export const nameOf = ({ path }: Pick<WireLeaf, 'path'>): string => {
  const typed = path.join(' ');
  return words.job[typed] ?? `${typed.charAt(0).toUpperCase()}${typed.slice(1).replaceAll('-', ' ')}`;
};

/** The command at a path such as `bucket add`. */
export const leafOf = (commands: readonly WireLeaf[], path: string): WireLeaf | undefined =>
  commands.find((leaf) => leaf.path.join(' ') === path);

/** What a keeper does that is no command. */
export interface Chore {
  name: string;
  about: string;
  open(): void;
}

interface Jobs {
  commands: WireLeaf[];
  chores: Chore[];
  open(leaf: WireLeaf): void;
}

/** The grid of job buttons, with one more that shows all the rest. */
export const jobGrid = (jobs: Jobs): HTMLElement => {
  const { commands, open } = jobs;
  const first = commonest.flatMap((path) => leafOf(commands, path) ?? []).slice(0, many);
  return h(
    'nav',
    { class: 'jobs', 'aria-label': words.jobs },
    ...first.map((leaf) =>
      button(nameOf(leaf), () => open(leaf), { class: 'job', 'data-path': leaf.path.join(' ') }),
    ),
    button(words.all, () => allJobs(jobs), { class: 'job all' }),
  );
};

/** All jobs: a keeper's own stand behind a button at the top, not below everybody's. */
const allJobs = ({ commands, chores, open }: Jobs): void => {
  const row = (name: string, about: string, press: () => void, path?: string) =>
    h(
      'li',
      {},
      button(
        h('span', {}, h('b', {}, name), h('small', {}, about)),
        () => {
          sheet.close();
          press();
        },
        { 'data-path': path },
      ),
    );
  const rows = (who: WireLeaf['who']) =>
    commands
      .filter((leaf) => leaf.who === who)
      .map((leaf) => row(nameOf(leaf), leaf.about, () => open(leaf), leaf.path.join(' ')));
  const keepers = [...chores.map((one) => row(one.name, one.about, one.open)), ...rows('keeper')];
  const lists = {
    member: h('ul', { class: 'all-jobs' }, ...rows('member')),
    keeper: h('ul', { class: 'all-jobs', hidden: true }, ...keepers),
  };
  const groups = (['member', 'keeper'] as const).map((who) => ({ name: words.group[who], value: who }));
  const show = (who: WireLeaf['who']) => {
    for (const { value } of groups) lists[value].hidden = value !== who;
  };
  const choice = choiceGroup(groups, 'member', show, { 'aria-label': words.all });
  const sheet = openSheet(words.all, ...(keepers.length > 0 ? [choice] : []), lists.member, lists.keeper);
};
