import { logs } from '../src/contract/contract.ts';
import { entry as entryKind } from '../src/contract/kinds/studioThings.ts';
import { entryId } from '../src/studio/ids.ts';

export const redact = logs({
  name: 'redact',
  about: (w) => w.people.redact.about,
  who: 'keeper',
  options: { entry: { kind: entryKind, needed: true, about: (w) => w.people.redact.entry } },
  async run(v, { words, book, member }) {
    const id = entryId(v.entry.stream, v.entry.seq);
    if (!(await book.entry(id))) return { kind: 'refusal', title: words.undo.none(id), data: { entry: id } };
    if (!(await book.redact(id, member)))
      return { kind: 'refusal', title: words.people.redact.none(id), data: { entry: id } };
    return { kind: 'answer', title: words.people.redact.done(id), data: { entry: id } };
  },
});
