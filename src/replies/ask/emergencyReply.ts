import { fact } from '../../contract/replyParts.ts';
import { bucketsNamed } from '../../studio/naming/bucketsNamed.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { emergencies, type Emergency } from '../../studio/handbook.ts';
import type { Asking, Reply } from '../../contract/contract.ts';
import { noteActions } from './noteActions.ts';
import { noteParts, noteTitle } from './noteParts.ts';
import { onceEach } from '../verdict/onceEach.ts';

const mostFacts = 3;
const mostActions = 3;

/** Nobody in an emergency types more than this before describing it. */
const mostLetters = 1200;

/** The emergencies in a question, whatever a bucket in it is called. */
export const emergenciesIn = async (asked: string, { book, handbook }: Asking): Promise<Emergency[]> => {
  const question = asked.slice(0, mostLetters);
  const { general } = bucketsNamed(question, await book.buckets(), (word) => handbook.knows(word));
  const found = new Set([...handbook.emergencies(question), ...handbook.emergencies(general)]);
  return emergencies.filter((one) => found.has(one));
};

/** The studio's own note on where the eye bath is. */
const ownFact = async (question: string, asking: Asking): Promise<NonNullable<Reply['facts']>> => {
  const { answers } = asking.handbook.find(question, await asking.book.notes());
  const own = answers.find(({ found }) => found.from === 'studio')?.found;
  return own ? [{ label: noteTitle(own), text: (await noteParts(own, asking)).answer }] : [];
};

/**
 * What to do now: the most urgent note first, then the others' first steps. It links the bucket's card, but does not
 * report its state.
 */
export const emergencyReply = async (
  found: readonly Emergency[],
  question: string,
  bucket: BucketState | undefined,
  asking: Asking,
): Promise<Reply | undefined> => {
  const notes = found.flatMap((id) => asking.handbook.note(id) ?? []);
  const [first, ...others] = notes;
  if (!first) return undefined;
  const { answer, facts, dont, cautions, reasons } = await noteParts(
    { from: 'handbook', note: first },
    asking,
  );
  const also = others.map((note) => fact(note.title, [note.answer]));
  return {
    kind: 'answer',
    title: answer,
    facts: [...also, ...(await ownFact(question, asking)), ...facts].slice(0, mostFacts),
    dont,
    cautions: onceEach([
      ...cautions,
      ...others.flatMap((note) => note.cautions.map(asking.words.ask.caution)),
    ]),
    reasons: [...reasons, ...others.map(({ basis }) => asking.words.ask.basis(basis))],
    actions: bucket
      ? noteActions(
          notes.flatMap(({ commands }) => commands),
          bucket,
          asking,
        ).slice(0, mostActions)
      : [],
    data: { emergency: true, answers: notes.map(({ id, title }) => ({ id, title, score: 1 })) },
  };
};
