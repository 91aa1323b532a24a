import type { Action, Reply } from '../contract/contract.ts';
import { printLine } from '../contract/parseLine.ts';
import { pressToRun } from '../contract/replyParts.ts';
import { unloggedReply } from '../replies/verdict/unloggedReply.ts';
import type { ResistCoat } from '../studio/resist/resistCoat.ts';
import { coatDoubt } from '../studio/resist/coatDoubt.ts';
import { coatReady, isReadyAt } from '../studio/resist/coatReady.ts';
import { minutes, since, type Instant } from '../studio/ids.ts';
import type { ClaimedReminder, Logbook } from '../studio/logbook/ports.ts';
import type { Text } from '../words/text/text.ts';
import type { Handbook } from '../studio/handbook.ts';
import { askedReminder } from './askedReminder.ts';
import { morningReminder } from './morningReminder.ts';
import type { Words } from '../words/words.ts';
import { bucketsReminder } from './bucketsReminder.ts';

/** A reminder that is later than this says that it is late. */
const onTime = minutes(5);
/** Discord remembers a nonce for about five minutes; after that, a repeat would be a second message. */
const nonceKnown = minutes(4);

export interface Composing {
  reminder: ClaimedReminder;
  book: Logbook;
  words: Words;
  handbook: Handbook;
  now: Instant;
}

const presses = (key: string, first: { label: Text; line: string }, { reminder: w }: Words): Action[] => [
  { ...first, press: 'run' },
  pressToRun(w.later, 'remind later', { reminder: key }),
  pressToRun(w.notMine, 'remind not-mine', { reminder: key }),
];

const ofCoat = async (
  coat: ResistCoat,
  { reminder: { key, about }, book, words, now }: Composing,
): Promise<Reply | undefined> => {
  const { reminder: w } = words;
  const studio = await book.studio();
  const ready = coatReady(coat, studio);
  if (ready === 'never') return undefined;
  const { id, pieces, resist, onAt } = coat;
  const facts = [{ label: [w.factCoat], text: w.coat(id, onAt) }];
  const done = printLine(['remind', 'done'], { reminder: key });
  const answer = (title: Text, first: { label: Text; line: string }): Reply => ({
    kind: 'answer',
    title,
    facts,
    actions: presses(key, first, words),
    data: { reminder: key, coat: id },
  });
  switch (about.kind) {
    case 'early':
      if (isReadyAt(ready, now)) return undefined;
      return answer(
        about.session === undefined
          ? w.early(pieces, resist, about.plan, ready.readyAt)
          : w.earlySession(pieces, resist, about.session, ready.readyAt),
        { label: w.wait, line: done },
      );
    case 'ready':
      if (!isReadyAt(ready, now)) return undefined;
      return {
        ...answer(
          w.ready(pieces, resist, coatDoubt(coat)),
          resist === 'latex'
            ? { label: w.seen, line: done }
            : { label: w.glazed, line: `/coat off coat:${id} how:glazed` },
        ),
        reasons: [words.coat.touch(resist)],
      };
    case 'peel':
      return {
        ...answer(w.peel(pieces, about.firing), {
          label: w.peeled,
          line: `/coat off coat:${id} how:peeled`,
        }),
        dont: [w.dontPull],
      };
    default:
      return undefined;
  }
};

const reminderReply = async (composing: Composing): Promise<Reply | undefined> => {
  const { reminder, book, words } = composing;
  const { about, key } = reminder;
  const { reminder: w } = words;
  const first = { label: w.seenTo, line: printLine(['remind', 'done'], { reminder: key }) };
  switch (about.kind) {
    case 'buckets': {
      const reply = await bucketsReminder(about, composing);
      return reply && { ...reply, actions: presses(key, first, words) };
    }
    case 'unlogged': {
      const bucket = await book.bucket(about.bucket);
      const change = bucket?.unlogged?.find(({ to }) => to.seq === about.reading);
      if (!bucket || bucket.retired || !change) return undefined;
      const studio = await book.studio();
      const { reasons, actions, data } = unloggedReply(change, about.bucket, { words, studio });
      const [, , notMine] = presses(key, first, words);
      return {
        kind: 'answer',
        title: words.unlogged.notice(bucket.settings.name, change, studio.units),
        reasons,
        actions: [...actions, { ...first, press: 'run' }, ...(notMine ? [notMine] : [])],
        data: { reminder: key, bucket: about.bucket, unlogged: data },
      };
    }
    case 'morning':
    case 'asked': {
      const reply = await (about.kind === 'asked'
        ? askedReminder(about, composing)
        : morningReminder(about, composing));
      return reply && { ...reply, actions: [...(reply.actions ?? []), { ...first, press: 'run' }] };
    }
    case 'unreachable':
      return {
        kind: 'answer',
        title: w.unreachable[about.why],
        actions: [{ ...first, press: 'run' }],
        data: { reminder: key },
      };
    default: {
      const coat = (await book.coats()).find(({ seq }) => seq === about.coat);
      return coat && ofCoat(coat, composing);
    }
  }
};

/** Composes a reminder from the logbook as it is now; undefined if there is nothing left to say. */
export const composeReminder = async (composing: Composing): Promise<Reply | undefined> => {
  const { reminder, words, now } = composing;
  const reply = await reminderReply(composing);
  if (!reply) return undefined;
  const { unsureSince, dueAt } = reminder;
  const again = unsureSince !== undefined && since(unsureSince, now) > nonceKnown;
  return {
    ...reply,
    private: !(reminder.about.kind === 'morning' && reminder.about.by === 'channel'),
    reasons: [
      ...(since(dueAt, now) > onTime ? [words.reminder.late(dueAt)] : []),
      ...(again ? [words.reminder.perhapsAgain] : []),
      ...(reply.reasons ?? []),
    ],
  };
};
