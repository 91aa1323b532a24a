import { definedOnly } from '../src/definedOnly.ts';
import { bucketFact } from '../src/replies/ask/bucketFact.ts';
import { bucketQuestion } from '../src/replies/ask/bucketQuestion.ts';
import { computedAnswer } from '../src/replies/ask/computedAnswer.ts';
import {
  asks,
  needed,
  optional,
  toRun,
  type Action,
  type Asking,
  type Kind,
  type Reply,
} from '../src/contract/contract.ts';
import { emergenciesIn, emergencyReply } from '../src/replies/ask/emergencyReply.ts';
import { bucket } from '../src/contract/kinds/bucket.ts';
import { text } from '../src/contract/kinds/texts.ts';
import { needsState } from '../src/replies/ask/needsState.ts';
import { noteActions } from '../src/replies/ask/noteActions.ts';
import { noteId, noteParts, noteTitle, readNote } from '../src/replies/ask/noteParts.ts';
import { onceEach } from '../src/replies/verdict/onceEach.ts';
import { printLine } from '../src/contract/parseLine.ts';
import { answerBySum } from '../src/replies/ask/sums/answerBySum.ts';
import { spelledNumbers } from '../src/replies/ask/sums/spelledNumbers.ts';
import { stateFact } from '../src/replies/ask/stateFact.ts';
import { seeAlso } from '../src/replies/ask/seeAlso.ts';
import { verdictReply } from '../src/replies/verdict/verdictReply.ts';
import { bucketsNamed } from '../src/studio/naming/bucketsNamed.ts';
import type { BucketState } from '../src/studio/bucket/bucketState.ts';
import type { NotesFound, FoundNote, StudioNote } from '../src/studio/handbook.ts';
import { markedCautions } from '../src/studio/verdict/verdictCautions.ts';
import type { Text } from '../src/words/text/text.ts';
import { keepOpenQuestion, withAskKeepers } from '../src/replies/ask/openQuestion.ts';

/** A longer question tells a story, and nobody can say which part of it is the question. */
const longest = 600;
const mostActions = 3;
const mostFacts = 3;

const answersData = (answers: readonly FoundNote[]) =>
  answers.slice(0, 5).map(({ found, score }) => ({
    id: noteId(found),
    title: found.note.title,
    score: Math.round(100 * score) / 100,
  }));

const withAnswers = (reply: Reply, answers: readonly FoundNote[]): Reply => ({
  ...reply,
  data: { ...reply.data, answers: answersData(answers) },
});

/** The reply when no note answers: it says so, and offers the nearest titles as buttons. */
const noNoteReply = async (
  { near }: NotesFound,
  state: BucketState | undefined,
  title: Text,
  asking: Asking,
): Promise<Reply> => {
  const some = near.slice(0, mostActions).map(({ found }) => found);
  return {
    kind: 'answer',
    title,
    ...(state && { facts: [await stateFact(state, asking)] }),
    reasons: some.length === 0 ? [] : [asking.words.ask.nearest(some.map(noteTitle))],
    actions: some.map((found) => readNote(found, asking)),
    data: { answers: [], ...definedOnly({ bucket: state?.no }) },
  };
};

const noteAnswer = async (
  question: string,
  { answers }: NotesFound,
  best: FoundNote,
  state: BucketState | undefined,
  asking: Asking,
): Promise<Reply> => {
  const w = asking.words.ask;
  const { found } = best;
  const note = await noteParts(found, asking, state);
  const sum = found.from === 'handbook' ? found.note.computes : undefined;
  const computed = sum && (await computedAnswer(sum, question, state, asking));
  const verdict = state && (await verdictReply(state, asking));
  const stands = state && needsState(found, state) ? state : undefined;
  const also = seeAlso(best, answers.slice(1), (id) => asking.handbook.note(id));
  const commands = found.from === 'handbook' ? found.note.commands : [];
  // The verdict is in the answer already.
  const left = commands.filter((one) => !(computed && sum === 'verdict' && one === 'water-or-stir'));
  const facts = computed
    ? [...(computed.facts ?? []), ...note.facts]
    : [...(stands ? [await stateFact(stands, asking)] : []), ...note.facts];
  const actions: Action[] = onceEach([
    ...(computed?.actions ?? []),
    ...noteActions(left, state, asking),
    ...also.map((one) => readNote(one, asking)),
  ]);
  return {
    kind: 'answer',
    title: computed?.title ?? note.answer,
    facts: facts.slice(0, mostFacts),
    dont: onceEach([...(computed?.dont ?? note.dont), ...((stands && verdict?.dont) ?? [])]).slice(0, 3),
    cautions: onceEach([
      ...(computed?.cautions ?? []),
      ...note.cautions,
      ...((stands
        ? verdict?.cautions
        : state && markedCautions(state.settings).map(asking.words.verdict.caution)) ?? []),
    ]),
    reasons: [
      ...(computed
        ? [w.behind(noteTitle(found), note.answer)]
        : facts.slice(mostFacts).map(({ label, text: said }) => w.behind(label, said))),
      ...(computed?.reasons ?? []),
      ...note.reasons,
      ...(also.length > 0 ? [w.seeAlso(also.map(noteTitle))] : []),
    ],
    actions: actions.slice(0, mostActions),
    data: {
      ...(stands ? verdict?.data : state && { bucket: state.no }),
      ...computed?.data,
      answers: answersData(answers),
    },
  };
};

/** The bucket that was given; otherwise the one that the question names. */
const bucketMeant = async (question: string, given: BucketState | undefined, { book, handbook }: Asking) => {
  const knows = (word: string) => handbook.knows(word);
  const named = bucketsNamed(spelledNumbers(question), await book.buckets(), knows);
  const { buckets } = named;
  return { ...named, state: given ?? (buckets.length === 1 ? buckets[0] : undefined) };
};

/** How close the studio's own note must score to the general answer to come before it. */
const ownShare = { named: 0.1, touched: 0.9 };

/** The answer: the studio's own note if it is about this bucket and this topic, otherwise a general note. */
const findAnswer = async (
  question: string,
  general: string,
  state: BucketState | undefined,
  notes: readonly StudioNote[],
  { handbook, book }: Asking,
): Promise<NotesFound> => {
  const inGeneral = handbook.find(general, notes);
  const whole = handbook.find(question, notes);
  const own = whole.answers[0]?.found;
  if (own?.from !== 'studio') return inGeneral;
  const [usual] = inGeneral.answers;
  if (!usual) return whole;
  const knows = (word: string) => handbook.knows(word);
  const named = bucketsNamed(`${own.note.title} ${own.note.words}`, await book.buckets(), knows);
  const isAbout = named.buckets.some(({ no }) => no === state?.no);
  const least = (isAbout ? ownShare.named : ownShare.touched) * usual.score;
  const also = inGeneral.near.find(({ found }) => noteId(found) === noteId(own));
  return (also?.score ?? 0) >= least ? whole : inGeneral;
};

/** Reads the bucket, but never refuses an emergency because of what was typed there. */
const bucketUnlessEmergency: Kind<BucketState | undefined> = {
  ...bucket,
  async read(typed, asking) {
    const read = await bucket.read(typed, asking);
    const urgent = !read.ok && (await emergenciesIn(asking.typed['question'] ?? '', asking)).length > 0;
    return urgent ? { ok: true, value: undefined } : read;
  },
};

export const ask = asks({
  name: 'ask',
  about: (w) => w.ask.about,
  who: 'member',
  form: ['question', 'bucket'],
  options: {
    question: needed(text(10_000, 'why is my glaze pinholing'), (w) => w.ask.question),
    bucket: optional(bucketUnlessEmergency, (w) => w.ask.bucket),
  },
  async run({ question, bucket: given }, asking) {
    const { words, book, handbook } = asking;
    const urgent = await emergenciesIn(question, asking);
    if (urgent.length > 0) {
      const { state } = await bucketMeant(question.slice(0, longest), given, asking);
      const now = await emergencyReply(urgent, question.slice(0, longest), state, asking);
      if (now) return now;
    }
    if (question.length > longest)
      return noNoteReply({ answers: [], near: [] }, undefined, words.ask.tooLong, asking);
    const { state, rest, general, buckets } = await bucketMeant(question, given, asking);
    const named = given ? [given, ...buckets] : buckets;
    const reckoned = await answerBySum(general, { bucket: state, named }, asking);
    const notes = await book.notes();
    if (reckoned) return withAnswers(reckoned, handbook.find(general, notes).answers);
    const found = await findAnswer(question, general, state, notes, asking);
    const [best] = found.answers;
    const asksOfCard = best?.found.from === 'studio' ? undefined : bucketQuestion(general);
    const card = state && asksOfCard && (await bucketFact(asksOfCard, state, asking));
    if (card) return withAnswers(card, []);
    const nothingElse = handbook.find(rest, notes).near.length === 0 && handbook.knows(rest);
    const nearest = best ? undefined : found.near[0]?.found;
    const asksVerdict = nearest?.from === 'handbook' && nearest.note.computes === 'verdict';
    // Even when no note answers, the bucket's state is known.
    if (state && (nothingElse || asksVerdict)) return withAnswers(await verdictReply(state, asking), []);
    if (!best) {
      const none = await noNoteReply(found, buckets.length > 0 ? state : undefined, words.ask.none, asking);
      return { ...withAskKeepers(none, question, asking), ...keepOpenQuestion(question, state, asking) };
    }
    const reply = await noteAnswer(question, found, best, state, asking);
    if (state || buckets.length === 0) return reply;
    const of = buckets.slice(0, mostActions).map(({ no, settings: { name } }) => {
      const line = printLine(['ask'], { question, bucket: String(no) });
      return toRun(words.ask.ofBucket(name), line);
    });
    return { ...reply, actions: [...of, ...(reply.actions ?? [])].slice(0, mostActions) };
  },
});
