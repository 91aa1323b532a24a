import { present } from '../../present.ts';
import { pressToEdit } from '../../contract/replyParts.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { markedCautions } from '../../studio/verdict/verdictCautions.ts';
import type { Text } from '../../words/text/text.ts';
import type { Action, Asking, Reply } from '../../contract/contract.ts';
import { nameKey } from '../../text/normalizedName.ts';
import { verdictReply } from '../verdict/verdictReply.ts';
import type { BucketQuestion } from './bucketQuestion.ts';
import { noteParts } from './noteParts.ts';

/** The handbook's note on a way to put glaze on. */
const noteOf = { brushing: 'brushing', spraying: 'spraying', dipping: undefined } as const;

/** Whether the bucket may be brushed, sprayed or dipped from: what it is made for, and what it needs now. */
const useAnswer = async (
  asked: Extract<BucketQuestion, { of: 'use' }>['use'],
  state: BucketState,
  asking: Asking,
): Promise<Reply | undefined> => {
  const { words, handbook } = asking;
  const verdict = await verdictReply(state, asking);
  if (state.hold || state.retired) return verdict;
  const { use } = state.settings;
  const noteId = noteOf[asked];
  const note = noteId && handbook.note(noteId);
  const parts = note && (await noteParts({ from: 'handbook', note }, asking, state));
  if (use === asked)
    return asked === 'dipping'
      ? undefined
      : {
          ...verdict,
          title: [...words.madeFor.yes(asked), ' ', ...verdict.title],
          cautions: [...(verdict.cautions ?? []), ...(parts?.cautions ?? [])],
          reasons: present([parts && parts.answer, ...(verdict.reasons ?? [])]),
        };
  return {
    kind: 'answer',
    title: words.madeFor.otherUse(state.settings.name, use, asked),
    dont: parts?.dont ?? [],
    cautions: [...markedCautions(state.settings).map(words.verdict.caution), ...(parts?.cautions ?? [])],
    reasons: parts ? [parts.answer] : [],
    data: { bucket: state.no, use },
  };
};

/** The materials of a recipe that the studio keeps under this name; otherwise what the keeper wrote. */
const recipeText = async (recipe: string, { words, book }: Asking): Promise<Text> => {
  const { recipes } = await book.studio();
  const kept = recipes.find(({ name }) => nameKey(name) === nameKey(recipe));
  return kept ? words.recipe.lines(kept.lines) : [{ said: recipe }];
};

const settingAnswer = async (
  of: Exclude<BucketQuestion['of'], 'use'>,
  { no, settings, hold }: BucketState,
  asking: Asking,
): Promise<Reply> => {
  const { words } = asking;
  const w = words.madeFor;
  const { name, recipe, bodies, cone, atmosphere } = settings;
  const firing = w.fires(settings);
  const known: Record<typeof of, Text | undefined> = {
    firing: firing && w.sentence(name, firing),
    bodies: bodies === undefined ? undefined : w.goesOn(name, bodies),
    recipe: recipe === undefined ? undefined : w.recipe(name, await recipeText(recipe, asking)),
  };
  const option = { firing: 'cone', bodies: 'bodies', recipe: 'recipe' }[of];
  const set: Action = pressToEdit(w.set[of], 'bucket change', { bucket: String(no), [option]: '' });
  return {
    kind: 'answer',
    title: known[of] ?? w.unknown[of](name),
    ...(hold && { dont: [words.verdict.dont('use')] }),
    cautions: markedCautions(settings).map(words.verdict.caution),
    ...(of === 'firing' && known.firing && { reasons: [w.testFirst] }),
    actions: known[of] ? [] : [set],
    data: {
      bucket: no,
      cone: cone ?? null,
      atmosphere: atmosphere ?? null,
      bodies: bodies ?? null,
      recipe: recipe ?? null,
    },
  };
};

/** The answer to a question about what a bucket is; undefined where the handbook or the verdict answers better. */
export const bucketFact = async (
  question: BucketQuestion,
  state: BucketState,
  asking: Asking,
): Promise<Reply | undefined> =>
  question.of === 'use' ? useAnswer(question.use, state, asking) : settingAnswer(question.of, state, asking);
