import { type Duration, type Instant, hours } from '../../studio/ids.ts';
import type { CoatDoubt } from '../../studio/resist/coatDoubt.ts';
import type { Resist } from '../../studio/resist/overnight.ts';
import type { ReminderAbout } from '../../studio/remind/reminder.ts';
import type { ReachBy } from '../../studio/settings/studio.ts';
import { coatWords } from '../resist/coatWords.ts';
import { spanText } from '../text/measures.ts';
import { join, said, t, type Text } from '../text/text.ts';

const dayAndTime = (when: Instant): Text => t`${{ at: when, show: 'day' }} ${{ at: when, show: 'clock' }}`;
const { kind } = coatWords;

const listed = (names: readonly string[], most: number): Text => {
  const shown = join(
    names.slice(0, most).map((name) => [said(name)]),
    ', ',
  );
  return names.length > most ? t`${shown} and ${names.length - most} more` : shown;
};

export const reminderWords = {
  about: 'Reminders: see them, put one off, say that it is done or not yours',
  listAbout: 'Your reminders to come',
  laterAbout: 'Put a reminder off',
  doneAbout: 'Say that a reminder is dealt with',
  notMineAbout: 'Say that a reminder is not for you, and hear no more of it',
  byAbout: 'Be reminded directly, or in the studio’s channel',
  way: 'direct or channel',
  which: 'The reminder, as its buttons and /remind list name it',
  for: 'For how long (1 h)',

  early: (pieces: string, resist: Resist, plan: Instant, ready: Instant): Text =>
    t`Don’t glaze ${said(pieces)} ${{ at: plan, show: 'day' }} ${{ at: plan, show: 'clock' }}: the ${[kind(resist)]} is not dry before ${dayAndTime(ready)}.`,
  earlySession: (pieces: string, resist: Resist, session: string, ready: Instant): Text =>
    t`Don’t glaze ${said(pieces)} at ${said(session)}: the ${[kind(resist)]} is not dry before ${dayAndTime(ready)}.`,
  ready: (pieces: string, resist: Resist, doubt: CoatDoubt | undefined): Text =>
    doubt
      ? t`The hours of the ${[kind(resist)]} on ${said(pieces)} are over, but ${[doubt.why === 'cold' ? 'in this cold it may never have become a film' : 'in air that damp it may be wet still']}. Touch it before you glaze.`
      : t`The ${[kind(resist)]} on ${said(pieces)} is dry: it can be glazed.`,
  peel: (pieces: string, firing: Instant): Text =>
    t`Peel the latex off ${said(pieces)} before the firing, ${dayAndTime(firing)}.`,
  buckets: (session: string, from: Instant, count: number): Text =>
    t`Before ${said(session)} at ${{ at: from, show: 'clock' }}: ${count} ${[count === 1 ? 'bucket wants' : 'buckets want']} you.`,
  bucketStep: { stir: 'Stir', sieve: 'Sieve', measure: 'Measure' },
  bucketNames: (names: readonly string[]): Text => listed(names, 8),
  unreachable: {
    closed: [
      'Somebody here takes no direct messages, and there is no reminder channel to turn to: /studio set channel:#glaze-room. Their reminders wait.',
    ] as Text,
    gone: [
      'I can’t write in the reminder channel: it is gone, or I may not. Set another: /studio set channel:#glaze-room. The reminders wait.',
    ] as Text,
  },

  late: (due: Instant): Text =>
    t`This comes late: it was due ${{ at: due, show: 'ago' }}, and I could not say it then.`,
  perhapsAgain: ['You may have had this already: I could not tell whether it got through.'] as Text,
  factCoat: 'Coat',
  coat: (id: string, on: Instant): Text => t`${[id]}, on since ${dayAndTime(on)}`,
  dontPull: ['Don’t fire latex: it burns and smells.'] as Text,

  wait: ['I’ll wait'] as Text,
  glazed: ['I glazed it'] as Text,
  seen: ['I’ve seen it'] as Text,
  peeled: ['I peeled it'] as Text,
  seenTo: ['I saw to it'] as Text,
  later: ['Remind me in 1 h'] as Text,
  notMine: ['Not mine'] as Text,

  none: (key: string): Text =>
    t`You have no reminder “${said(key)}” any more. /remind list shows those to come.`,
  tooLate: (until: Instant): Text =>
    t`By then it is of no use: it is good until ${dayAndTime(until)}. Nothing was changed.`,
  putOff: (to: Instant): Text => t`I’ll remind you ${dayAndTime(to)}.`,
  done: ['Dealt with. You hear no more of it.'] as Text,
  disowned: (id: string): Text =>
    t`${[id]} is noted as somebody else’s: no more reminders of it. A keeper still sees it in /coat list.`,
  nothing: ['No reminders are coming.'] as Text,
  listTitle: (count: number): Text => t`${count} ${[count === 1 ? 'reminder is' : 'reminders are']} coming.`,
  row: (when: Instant): Text => dayAndTime(when),
  subject: (about: ReminderAbout, coat: { pieces: string; resist: Resist } | undefined): Text => {
    const on = coat ? t`${said(coat.pieces)}, ${[kind(coat.resist)]}` : t`a resist coat`;
    switch (about.kind) {
      case 'early':
        return about.session === undefined
          ? t`${on}: not dry for your plan`
          : t`${on}: not dry for ${said(about.session)}`;
      case 'ready':
        return t`${on}: dry`;
      case 'peel':
        return t`${on}: to peel before the firing`;
      case 'buckets':
        return t`buckets that want you before ${said(about.session)}`;
      case 'unlogged':
        return t`bucket ${about.bucket}: something that nobody logged`;
      case 'unreachable':
        return t`somebody who can’t be reminded`;
    }
  },
  named: (subject: Text, key: string): Text => t`${subject} (${said(key)})`,
  by: (way: ReachBy): Text =>
    way === 'direct'
      ? ['Reminders come to you directly; to the channel when that is closed.']
      : ['Reminders come to you in the studio’s channel.'],
  span: (long: Duration): string => spanText(long / hours(1)),
};

/** What the operator finds in the log. */
export const reminderLog = {
  outOfDate: 'a reminder was out of date before it could be said',
  notNeeded: 'a reminder was not needed any more',
  nobody: 'nobody here could say a reminder; it waits',
  failed: 'a reminder could not be said; it waits',
  broken: 'the reminders stumbled; they go on',
};
