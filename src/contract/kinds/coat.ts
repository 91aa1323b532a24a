import { areSamePieces, type ResistCoat } from '../../studio/resist/resistCoat.ts';
import { coatStream, entryId, readEntryId, type Seq } from '../../studio/ids.ts';
import type { Asking, Choice, Kind, Read } from '../contract.ts';

/** A coat's sequence number, typed as `c-12` or 12. */
const placeOf = (typed: string): Seq | undefined => {
  const named = readEntryId(/^\s*\d+\s*$/.test(typed) ? `c-${typed.trim()}` : typed);
  return named?.stream === coatStream ? named.seq : undefined;
};

const choice = ({ id, pieces, resist }: ResistCoat, { words }: Asking): Choice => ({
  name: `${id} · ${pieces} · ${words.coat.kinds[resist]}`,
  value: id,
});

/** People may change their own coats; a keeper may change all. */
const mayChange = ({ by }: ResistCoat, { role, member }: Asking): boolean =>
  role === 'keeper' || by === member;

const changeableCoats = async (asking: Asking): Promise<ResistCoat[]> =>
  (await asking.book.coats()).filter((coat) => mayChange(coat, asking));

const byPlace = async (place: Seq, typed: string, asking: Asking): Promise<Read<ResistCoat>> => {
  const { book, words } = asking;
  const found = (await book.coats()).find(({ seq, below }) => seq === place || below.includes(place));
  if (found)
    return mayChange(found, asking)
      ? { ok: true, value: found }
      : { ok: false, why: words.coat.notYours(found.id) };
  const entry = await book.entry(entryId(coatStream, place));
  return { ok: false, why: entry?.event.kind === 'on' ? words.coat.isOff(typed) : words.coat.noCoat(typed) };
};

/** A resist coat that is still on, by its id or its pieces. */
export const coat: Kind<ResistCoat> = {
  control: 'text',
  example: 'c-12',
  async read(typed, asking) {
    const place = placeOf(typed);
    if (place !== undefined) return byPlace(place, typed, asking);
    const found = (await changeableCoats(asking)).filter(({ pieces }) => areSamePieces(pieces, typed));
    const [only, ...others] = found;
    const { coat: w } = asking.words;
    if (!only) return { ok: false, why: w.noCoat(typed) };
    if (others.length === 0) return { ok: true, value: only };
    return { ok: false, why: w.which(typed), choices: found.slice(0, 5).map((one) => choice(one, asking)) };
  },
  async suggest(typed, asking) {
    const wanted = typed.toLowerCase();
    return (await changeableCoats(asking))
      .toReversed()
      .filter(({ id, pieces }) => id.includes(wanted) || pieces.toLowerCase().includes(wanted))
      .map((one) => choice(one, asking));
  },
};
