import {
  logs,
  needed,
  optional,
  refusal,
  toRun,
  type Logging,
  type Reply,
} from '../../src/contract/contract.ts';
import { isoInstant } from '../../src/studio/time/isoInstant.ts';
import { time } from '../../src/contract/kinds/quantities.ts';
import { reminder as reminderKind } from '../../src/contract/kinds/reminder.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';
import { days, hours, later, minutes } from '../../src/studio/ids.ts';
import type { Reminder } from '../../src/studio/remind/reminder.ts';

const usualSnooze = hours(1);

const reminderOption = needed(reminderKind, (w: Logging['words']) => w.reminder.which);

export const remindLater = logs({
  name: 'later',
  about: (w) => w.reminder.laterAbout,
  who: 'member',
  private: true,
  options: {
    reminder: reminderOption,
    for: optional(time(minutes(5), days(2), 'min', '1h'), (w) => w.reminder.for),
  },
  async run(v, { words, book, now, member }): Promise<Reply> {
    const to = later(now, v.for ?? usualSnooze);
    const { key, goodUntil } = v.reminder;
    if (to >= goodUntil) return refusal(words.reminder.tooLate(goodUntil));
    await book.putOff(member, key, to);
    return { kind: 'answer', title: words.reminder.putOff(to), data: { reminder: key, at: isoInstant(to) } };
  },
});

const finished = async ({ key }: Reminder, { words, book, member }: Logging): Promise<Reply> => {
  await book.finish(member, key);
  return { kind: 'answer', title: words.reminder.done, data: { reminder: key } };
};

export const remindDone = logs({
  name: 'done',
  about: (w) => w.reminder.doneAbout,
  who: 'member',
  private: true,
  options: { reminder: reminderOption },
  run: (v, context) => finished(v.reminder, context),
});

export const remindNotMine = logs({
  name: 'not-mine',
  about: (w) => w.reminder.notMineAbout,
  who: 'member',
  private: true,
  options: { reminder: reminderOption },
  async run(v, context): Promise<Reply> {
    const { words, book, member } = context;
    const { about, key } = v.reminder;
    const coat =
      'coat' in about
        ? (await book.coats()).find(({ seq, by }) => seq === about.coat && by === member)
        : undefined;
    if (!coat) return finished(v.reminder, context);
    const { entry } = await book.logCoat({ kind: 'not-mine', of: coat.seq }, stampNow(context));
    return {
      kind: 'answer',
      title: words.reminder.disowned(coat.id),
      actions: [toRun(words.coat.takeBack, `/undo entry:${entry.id}`)],
      data: { reminder: key, entry: entry.id },
    };
  },
});
