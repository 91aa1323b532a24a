import { normalizedName } from '../../text/normalizedName.ts';
import { studioNoteId, type StudioNote } from '../../studio/handbook.ts';
import type { Asking, Choice, Kind } from '../contract.ts';

const choice = ({ no, title }: StudioNote, { words }: Asking): Choice => ({
  name: words.notes.choice(studioNoteId(no), title),
  value: studioNoteId(no),
  typed: title,
});

/** A note of the studio's own, by number or title. */
export const studioNote: Kind<StudioNote> = {
  control: 'text',
  prose: true,
  example: 'n-1',
  async read(typed, asking) {
    const notes = await asking.book.notes();
    const number = Number(/^\s*(?:n-)?(\d{1,9})\s*$/i.exec(typed)?.[1]);
    const numbered = notes.find(({ no }) => no === number);
    if (numbered) return { ok: true, value: numbered };
    const wanted = normalizedName(typed);
    const begun = wanted === '' ? [] : notes.filter(({ title }) => normalizedName(title).startsWith(wanted));
    const exact = begun.find(({ title }) => normalizedName(title) === wanted);
    const only = exact ?? (begun.length === 1 ? begun[0] : undefined);
    if (only) return { ok: true, value: only };
    const { notes: w } = asking.words;
    return begun.length > 1
      ? { ok: false, why: w.which(typed), choices: begun.map((one) => choice(one, asking)) }
      : { ok: false, why: w.none(typed) };
  },
  async suggest(typed, asking) {
    const wanted = normalizedName(typed);
    return (await asking.book.notes())
      .filter(({ no, title }) => `${studioNoteId(no)} ${normalizedName(title)}`.includes(wanted))
      .map((one) => choice(one, asking));
  },
};
