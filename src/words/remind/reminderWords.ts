import type { ToldWhere } from '../../studio/remind/toldWhere.ts';
import { type Instant, hours, since } from '../../studio/ids.ts';
import type { CoatDoubt } from '../../studio/resist/coatDoubt.ts';
import type { Resist } from '../../studio/resist/overnight.ts';
import type { ReminderAbout } from '../../studio/remind/reminder.ts';
import type { ReachBy } from '../../studio/settings/studio.ts';
import { coatWords } from '../resist/coatWords.ts';
import { said, t, type Text, saidNames } from '../text/text.ts';
import { someOf } from '../text/someOf.ts';
import { dayAndTime } from '../text/dayAndTime.ts';

const { kinds } = coatWords;

const listed = (names: readonly string[], most: number): Text => {
  const shown = saidNames(names.slice(0, most));
  return names.length > most ? t`${shown} and ${names.length - most} more` : shown;
};

const places: Record<ToldWhere, string> = {
  here: 'here',
  direct: 'in a direct message',
  channel: 'in the studio’s channel',
};

export const reminderWords = {
  about: 'Reminders: see them, put one off, mark one as done or as not yours',
  listAbout: 'The reminders that you have coming',
  laterAbout: 'Be reminded later',
  doneAbout: 'Mark a reminder as done',
  notMineAbout: 'Say that a reminder is not for you, so that it stops',
  byAbout: 'Choose whether reminders come to you directly or in the studio’s channel',
  meAbout: 'Be told to look at a bucket again, in so many minutes',
  meIn: 'In how long, such as 10 min',
  meBucket: 'Which bucket',
  tellIn10: t`Tell me in 10 minutes`,
  factTold: 'Reminder',
  /** Who is told, where and when. */
  toldAt: (where: ToldWhere, at: Instant, now: Instant): Text =>
    since(now, at) < hours(12)
      ? t`I’ll tell you ${[places[where]]} at ${{ at, show: 'clock' }}.`
      : t`I’ll tell you ${[places[where]]}, ${dayAndTime(at)}.`,
  way: 'Where your reminders come',
  which: 'Which reminder',
  for: 'How much later (usually 1 h)',

  early: (pieces: string, resist: Resist, plan: Instant, ready: Instant): Text =>
    t`Don’t glaze ${said(pieces)} ${dayAndTime(plan)}: the ${[kinds[resist]]} is not dry before ${dayAndTime(ready)}.`,
  earlySession: (pieces: string, resist: Resist, session: string, ready: Instant): Text =>
    t`Don’t glaze ${said(pieces)} at ${said(session)}: the ${[kinds[resist]]} is not dry before ${dayAndTime(ready)}.`,
  ready: (pieces: string, resist: Resist, doubt: CoatDoubt | undefined): Text =>
    doubt
      ? t`The drying time of the ${[kinds[resist]]} on ${said(pieces)} is over, but in ${[coatWords.doubted(doubt)]}. Touch it before you glaze.`
      : t`The ${[kinds[resist]]} on ${said(pieces)} is dry: you can glaze now.`,
  peel: (pieces: string, firing: Instant): Text =>
    t`Peel the latex off ${said(pieces)} before the firing, ${dayAndTime(firing)}.`,
  buckets: (session: string, from: Instant, count: number): Text =>
    t`Before ${said(session)} at ${{ at: from, show: 'clock' }}: ${[someOf(count, 'bucket needs', 'buckets need')]} work.`,
  bucketStep: { stir: 'Stir', sieve: 'Sieve', measure: 'Measure' },
  bucketNames: (names: readonly string[]): Text => listed(names, 8),
  asked: (name: string, then: Text): Text => t`${said(name)}: the time is up. ${then}`,
  tenMore: t`In 10 more minutes`,
  notAfterAll: t`Not after all`,
  stop: t`Don’t remind me`,
  unreachable: {
    closed: t`A member accepts no direct messages, and no reminder channel is set. Their reminders wait. Set one: /studio set channel:#glaze-room.`,
    gone: t`I can’t write in the reminder channel: it is gone, or I have no permission. The reminders wait. Set another: /studio set channel:#glaze-room.`,
  },

  late: (due: Instant): Text =>
    t`This comes late: it was due ${{ at: due, show: 'ago' }}, but I could not send it then.`,
  perhapsAgain: t`You may have seen this already: I don’t know whether it got through.`,
  factCoat: 'Coat',
  coat: (id: string, on: Instant): Text => t`${[id]}, on since ${dayAndTime(on)}`,
  dontPull: t`Don’t fire latex: it burns and smells.`,

  wait: t`I’ll wait`,
  glazed: t`I glazed it`,
  seen: t`I’ve seen it`,
  peeled: t`I peeled it`,
  seenTo: t`I took care of it`,
  later: t`Remind me in 1 h`,
  notMine: t`Not mine`,

  none: (key: string): Text =>
    t`You have no reminder “${said(key)}” any more. /remind list shows the ones you have.`,
  tooLate: (until: Instant): Text =>
    t`That is too late for this reminder, which matters until ${dayAndTime(until)}. Nothing was changed.`,
  putOff: (to: Instant): Text => t`I’ll remind you ${dayAndTime(to)}.`,
  done: t`Done. I won’t remind you of it again.`,
  disowned: (id: string): Text =>
    t`${[id]} is marked as somebody else’s. You get no more reminders about it. Keepers still see it in /coat list.`,
  nothing: t`No reminders are coming.`,
  listTitle: (count: number): Text => t`${[someOf(count, 'reminder is', 'reminders are')]} coming.`,
  row: (when: Instant): Text => dayAndTime(when),
  subject: (about: ReminderAbout, coat: { pieces: string; resist: Resist } | undefined): Text => {
    const on = coat ? t`${said(coat.pieces)}, ${[kinds[coat.resist]]}` : t`a resist coat`;
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
        return t`buckets that need work before ${said(about.session)}`;
      case 'unlogged':
        return t`bucket ${about.bucket}: a change that nobody logged`;
      case 'morning':
        return t`the round of ${[about.day]}`;
      case 'asked':
        return t`bucket ${about.bucket}: to look again, as you asked`;
      case 'unreachable':
        return t`a member who can’t be reached`;
    }
  },
  named: (subject: Text, key: string): Text => t`${subject} (${said(key)})`,
  by: (way: ReachBy): Text =>
    way === 'direct'
      ? t`Reminders come to you directly, or in the channel if you accept no direct messages.`
      : t`Reminders come to you in the studio’s channel.`,
};

/** What the operator finds in the log. */
export const reminderLog = {
  outOfDate: 'a reminder was out of date before it could be sent',
  notNeeded: 'a reminder was no longer needed',
  nobody: 'no platform could send a reminder; it waits',
  failed: 'a reminder could not be sent; it waits',
  broken: 'an error in the reminders; they go on',
};
