import type { Instant } from '../../studio/ids.ts';
import { someOf } from '../text/someOf.ts';
import { listed } from '../text/listed.ts';
import { said, t, type Part, type Text } from '../text/text.ts';
import { dayAndTime } from '../text/dayAndTime.ts';

const things = (count: number): string => someOf(count, 'thing', 'things');

export const roundWords = {
  about:
    'What there is to do now: for keepers in the whole room, for members with their own coats and pieces',
  nothing: {
    keeper: t`Nothing is left to do. Every bucket can be used after a stir.`,
    member: t`Nothing waits for you.`,
  },
  title: {
    keeper: (count: number, first: Text): Text =>
      t`${[things(count)]} to do. ${[count === 1 ? 'It is' : 'First']}: ${first}.`,
    member: (count: number): Text => t`${[things(count)]} ${[count === 1 ? 'waits' : 'wait']} for you.`,
  },
  bucket: (no: number, name: string): Text => t`${no} · ${said(name)}`,
  stirFirst: (then: Text): Text => t`Stir it to the bottom first. After that, by its last reading: ${then}`,
  secondCup: (stirFirst: boolean): Text =>
    t`The last reading does not fit the logbook. ${[stirFirst ? 'Stir it to the bottom, then weigh' : 'Weigh']} a second cup: if it reads the same, something went in or out that nobody logged.`,
  sayHowFull: t`Say how full it is`,
  setWindow: t`Set its window`,
  coat: (pieces: string, by: Part | undefined): Text =>
    by === undefined ? t`${said(pieces)}` : t`${said(pieces)} · ${by}`,
  was: { glazed: t`It was glazed`, peeled: t`It was peeled` },
  piece: (left: readonly string[], plannedFor: Instant | undefined): Text => [
    ...t`still to do: ${[left.length > 3 ? `${left.slice(0, 3).join(', ')} and ${left.length - 3} more` : listed(left)]}`,
    ...(plannedFor === undefined ? [] : t`, planned for ${dayAndTime(plannedFor)}`),
  ],
  showPlan: t`Show its plan`,
  reminder: 'Reminder',
  question: 'Asked, not answered',
  asked: (text: string, times: number, at: Instant, by: Part | undefined): Text => [
    ...t`“${said(text)}” `,
    ...(times > 1 ? t`${times} times, last ${{ at, show: 'day' }}` : t`${{ at, show: 'day' }}`),
    ...(by === undefined ? [] : t`, by ${by}`),
  ],
  writeNote: t`Write a note`,
  notNeeded: t`Take it off`,
  log: t`Log of all buckets`,
  strips: {
    title: 'The last two weeks',
    alt: (measured: number, all: number): string =>
      `Gravity of the last two weeks, a strip for each of ${measured} of ${all} buckets; the rows above say what each one needs`,
    key: 'Band: the window. Dots: gravity readings; hollow ones were not taken stirred. Lines: midnights.',
  },
};
