import { logs, optional, refusal, type Logging, type Reply } from '../src/contract/contract.ts';
import { pressToRun } from '../src/contract/replyParts.ts';
import { yesNo } from '../src/contract/kinds/picks.ts';
import { entry as entryKind } from '../src/contract/kinds/studioThings.ts';
import { text } from '../src/contract/kinds/texts.ts';
import { entryId, type Seq, type StreamNo } from '../src/studio/ids.ts';
import { erasedMark, nameAsWord } from '../src/studio/people/withoutWords.ts';

const noteOf = async (
  { stream, seq }: { stream: StreamNo; seq: Seq },
  { words, book, member }: Logging,
): Promise<Reply> => {
  const id = entryId(stream, seq);
  if (!(await book.entry(id))) return refusal(words.undo.none(id), { entry: id });
  if (!(await book.redact(id, member))) return refusal(words.people.redact.none(id), { entry: id });
  return { kind: 'answer', title: words.people.redact.done(id), data: { entry: id } };
};

/** Whether taking the name out would leave two things of one sort with the same name. */
const leavesSameNames = async (name: RegExp, { book }: Logging): Promise<boolean> => {
  const { vessels, cups, sessions, recipes } = await book.studio();
  const buckets = (await book.buckets()).map(({ settings }) => settings);
  return [vessels, cups, sessions, recipes, buckets].some((things) => {
    const after = things.map((thing) => thing.name.replace(name, erasedMark).toLowerCase());
    return new Set(after).size < after.length;
  });
};

const nameOf = async (typed: string, sure: boolean, context: Logging): Promise<Reply> => {
  const w = context.words.people.redact;
  const name = nameAsWord([typed]);
  if (!name || [...typed].length < 2) return refusal(w.noName(typed));
  if (await leavesSameNames(name, context)) return refusal(w.mixes(typed));
  if (!sure)
    return {
      kind: 'refusal',
      title: w.askName(typed),
      actions: [pressToRun(w.takeOut(typed), 'redact', { name: typed, sure: 'yes' })],
      // The line contains the name.
      fleeting: true,
      data: { redacted: false },
    };
  await context.book.redactName(typed);
  return { kind: 'answer', title: w.nameDone, data: { redacted: true } };
};

export const redact = logs({
  name: 'redact',
  about: (w) => w.people.redact.about,
  who: 'keeper',
  options: {
    entry: optional(entryKind, (w) => w.people.redact.entry),
    name: optional({ ...text(60, 'Wren'), secret: true }, (w) => w.people.redact.name),
    sure: optional(yesNo, (w) => w.people.redact.sure),
  },
  async run(v, context): Promise<Reply> {
    if (v.entry && v.name === undefined) return noteOf(v.entry, context);
    if (v.name !== undefined && !v.entry) return nameOf(v.name, v.sure === true, context);
    return refusal(context.words.people.redact.which);
  },
});
