import { areSamePieces, type ResistCoat } from '../../studio/resist/resistCoat.ts';
import { coatStream, entryId, readEntryId, type Seq } from '../../studio/ids.ts';
import type { Asking, Choice, Kind, Read } from '../contract.ts';

/** A coat's sequence number, typed as `c-12` or 12. */
const placeOf = (typed: string): Seq | undefined => {
  const named = readEntryId(/^\s*\d+\s*$/.test(typed) ? `c-${typed.trim()}` : typed);
  return named?.stream === coatStream ? named.seq : undefined;
};

const choice = ({ id, pieces, resist }: ResistCoat, { words }: Asking): Choice => ({
  name: `${id} · ${pieces} · ${words.coat.kinds[resist]}`.slice(0, 100),
  value: id,
});

/** The coats that somebody may change: their own; for a keeper, all. */
const changeableCoats = async ({ book, role, member }: Asking): Promise<ResistCoat[]> =>
  (await book.coats()).filter(({ by }) => role === 'keeper' || by === member);

const byPlace = async (
  place: Seq,
  typed: string,
  { book, words, role, member }: Asking,
): Promise<Read<ResistCoat>> => {
  const found = (await book.coats()).find(({ seq, below }) => seq === place || below.includes(place));
  if (found && (role === 'keeper' || found.by === member)) return { ok: true, value: found };
  if (found) return { ok: false, why: words.coat.notYours(found.id) };
  const entry = await book.entry(entryId(coatStream, place));
  return {
    ok: false,
    why: entry?.event.kind === 'on' ? words.coat.isOff(typed) : words.coat.noCoat(typed),
  };
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
    if (only && others.length === 0) return { ok: true, value: only };
    const { words } = asking;
    if (!only) return { ok: false, why: words.coat.noCoat(typed) };
    return {
      ok: false,
      why: words.coat.which(typed),
      choices: found.slice(0, 5).map((one) => choice(one, asking)),
    };
  },
  async suggest(typed, asking) {
    const wanted = typed.toLowerCase();
    return (await changeableCoats(asking))
      .toReversed()
      .filter(({ id, pieces }) => id.includes(wanted) || pieces.toLowerCase().includes(wanted))
      .slice(0, 25)
      .map((one) => choice(one, asking));
  },
};
