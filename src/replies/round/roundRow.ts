import { pressToEdit, pressToRun } from '../../contract/replyParts.ts';
import type { Member } from '../../studio/logbook/ports.ts';
import type { ResistCoat } from '../../studio/resist/resistCoat.ts';
import { coatDoubt } from '../../studio/resist/coatDoubt.ts';
import { isReadyAt } from '../../studio/resist/coatReady.ts';
import type { RoundItem } from '../../studio/round/roundItem.ts';
import type { Studio } from '../../studio/settings/studio.ts';
import type { Part } from '../../words/text/text.ts';
import type { Action, Asking, Fact } from '../../contract/contract.ts';
import { unloggedReply } from '../verdict/unloggedReply.ts';
import { asksHowFull, verdictActions } from '../verdict/verdictActions.ts';
import { windowPress } from '../verdict/windowProposed.ts';
import type { WindowProposal } from '../../studio/firing/proposeWindow.ts';

/** What a row is made from, read once for all of them. */
export interface RowSetting {
  asking: Asking;
  studio: Studio;
  members: readonly Member[];
  /** Windows for buckets that have none, by number. */
  windows?: ReadonlyMap<number, WindowProposal>;
}

const nameOf = (member: Member['id'], { asking, members }: RowSetting): Part => ({
  member,
  name: members.find(({ id }) => id === member)?.name ?? asking.words.someone,
});

const readingOf = (bucket: number, { words }: Asking): Action =>
  pressToEdit(words.verdict.measureIt, 'reading', { bucket: String(bucket) });

type OfVerdict = Extract<RoundItem, { verdict: unknown }>;

const verdictPress = (
  { kind, bucket, verdict, stirFirst }: OfVerdict,
  { asking, studio, windows }: RowSetting,
): Action[] => {
  const { words } = asking;
  // A hold for a hazard is released on the bucket’s card, not from a list, so that the keeper has read the card.
  if (kind === 'hold' && bucket.hold?.cause === 'hazard') return [];
  if (kind === 'reading') return [readingOf(bucket.no, asking)];
  if (stirFirst) return [pressToRun(words.verdict.stirredIt, 'stirred', { bucket: String(bucket.no) })];
  const window = windows?.get(bucket.no);
  if (window) return [windowPress(bucket, window, asking)];
  if (asksHowFull(verdict, bucket.settings))
    return [pressToEdit(words.round.sayHowFull, 'reading', { bucket: String(bucket.no) })];
  if (verdict.rule === 'no-window')
    return [pressToEdit(words.round.setWindow, 'bucket change', { bucket: String(bucket.no) })];
  // To release a bucket is a decision: its form comes first.
  return verdictActions(verdict, bucket.settings, asking, studio)
    .slice(0, 1)
    .map((action) => (kind === 'hold' ? { ...action, press: 'edit' } : action));
};

const ofVerdict = (item: OfVerdict, setting: RowSetting): Fact => {
  const { words } = setting.asking;
  const { bucket, verdict, stirFirst, kind } = item;
  const window = setting.windows?.get(bucket.no);
  const title = window ? words.verdict.proposed(window) : words.verdict.title(verdict, setting.studio);
  return {
    label: words.round.bucket(bucket.no, bucket.settings.name),
    text: stirFirst && kind !== 'reading' ? words.round.stirFirst(title) : title,
    presses: verdictPress(item, setting),
  };
};

const coatGone = ({ id, resist, by }: ResistCoat, { asking: { words, member } }: RowSetting): Action => {
  const how = resist === 'latex' || resist === 'tape' ? 'peeled' : 'glazed';
  const mine = words.reminder[how];
  const theirs = words.round.was[how];
  return pressToRun(by === member ? mine : theirs, 'coat off', { coat: id, how });
};

/** An item as a row of the list, with what can be pressed for it. */
export const roundRow = (item: RoundItem, setting: RowSetting): Fact => {
  const { asking, studio } = setting;
  const { words, now, member } = asking;
  const w = words.round;
  switch (item.kind) {
    case 'unlogged': {
      const { bucket, change } = item;
      return {
        label: w.bucket(bucket.no, bucket.settings.name),
        text: words.unlogged.sentence(change, studio.units),
        presses: unloggedReply(change, bucket.no, { words, studio }).actions.slice(0, 1),
      };
    }
    case 'second-cup': {
      const { no, settings } = item.bucket;
      const text = w.secondCup(item.stirFirst);
      return { label: w.bucket(no, settings.name), text, presses: [readingOf(no, asking)] };
    }
    case 'reminder': {
      const { about, key } = item.reminder;
      return {
        label: [w.reminder],
        text: words.reminder.subject(about, undefined),
        presses: [pressToRun(words.reminder.seenTo, 'remind done', { reminder: key })],
      };
    }
    case 'coat': {
      const { coat, ready } = item;
      const at = ready === 'never' ? undefined : ready.readyAt;
      const isReady = isReadyAt(ready, now);
      return {
        label: w.coat(coat.pieces, coat.by === member ? undefined : nameOf(coat.by, setting)),
        text: words.coat.rowText(coat.resist, at, isReady, {
          peel: coat.resist === 'latex',
          doubt: coatDoubt(coat),
        }),
        presses: isReady ? [coatGone(coat, setting)] : [],
      };
    }
    case 'piece': {
      const { id, by, said, steps, done } = item.piece;
      const left = steps.filter((step) => !done.some((one) => one.step === step));
      return {
        label: w.coat(said.name, by === member ? undefined : nameOf(by, setting)),
        text: w.piece(left.map(words.prep.short), said.plannedFor),
        presses: [pressToRun(w.showPlan, 'prep', { piece: id })],
      };
    }
    case 'question': {
      const { no, text, times, at, by } = item.question;
      return {
        label: [w.question],
        text: w.asked(text, times, at, by === undefined ? undefined : nameOf(by, setting)),
        presses: [
          pressToEdit(w.writeNote, 'note add', { title: text.slice(0, 80), words: text.slice(0, 200) }),
          pressToRun(w.notNeeded, 'note answered', { question: `q-${no}` }),
        ],
      };
    }
    default:
      return ofVerdict(item, setting);
  }
};

/** What tells rows apart, for a list that goes on from one of them. */
export const rowKey = (item: RoundItem): string => {
  switch (item.kind) {
    case 'reminder':
      return item.reminder.key;
    case 'coat':
      return item.coat.id;
    case 'piece':
      return item.piece.id;
    case 'question':
      return `q-${item.question.no}`;
    default:
      return `${item.kind}-${item.bucket.no}`;
  }
};
