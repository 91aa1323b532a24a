import { roomPageWords as words } from '../../words/platform/roomPageWords.ts';
import type { WireLeaf } from '../wire.ts';
import { button, h } from './dom.ts';
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
const many = 6;

export const nameOf = ({ path }: Pick<WireLeaf, 'path'>): string => {
  const typed = path.join(' ');
  return words.job[typed] ?? `${typed.charAt(0).toUpperCase()}${typed.slice(1).replaceAll('-', ' ')}`;
};

/** The grid of job buttons, with one more that shows all the rest. */
export const jobGrid = (commands: WireLeaf[], open: (leaf: WireLeaf) => void): HTMLElement => {
  const byPath = new Map(commands.map((leaf) => [leaf.path.join(' '), leaf]));
  const first = commonest.flatMap((path) => byPath.get(path) ?? []).slice(0, many);
  return h(
    'nav',
    { class: 'jobs', 'aria-label': words.jobs },
    ...first.map((leaf) =>
      button(nameOf(leaf), () => open(leaf), { class: 'job', 'data-path': leaf.path.join(' ') }),
    ),
    button(words.all, () => allJobs(commands, open), { class: 'job all' }),
  );
};

const allJobs = (commands: WireLeaf[], open: (leaf: WireLeaf) => void): void => {
  const sheet = openSheet(
    words.all,
    ...(['member', 'keeper'] as const).flatMap((who) => {
      const theirs = commands.filter((leaf) => leaf.who === who);
      if (theirs.length === 0) return [];
      return [
        h('h3', {}, words.group[who]),
        h(
          'ul',
          { class: 'all-jobs' },
          ...theirs.map((leaf) =>
            h(
              'li',
              {},
              button(
                h('span', {}, h('b', {}, nameOf(leaf)), h('small', {}, leaf.about)),
                () => {
                  sheet.close();
                  open(leaf);
                },
                { 'data-path': leaf.path.join(' ') },
              ),
            ),
          ),
        ),
      ];
    }),
  );
};
