import { definedOnly } from '../../src/definedOnly.ts';
import { fraction } from '../../src/glaze/units.ts';
import { coatReply } from '../../src/replies/resist/coatReply.ts';
import { logs, needed, optional, refusal } from '../../src/contract/contract.ts';
import { entryStamp } from '../../src/contract/entryStamp.ts';
import { pick } from '../../src/contract/kinds/picks.ts';
import { pieces } from '../../src/contract/kinds/pieces.ts';
import { percent, temperature as degrees } from '../../src/contract/kinds/quantities.ts';
import { hourAhead, hourPast } from '../../src/contract/kinds/when.ts';
import { noteOption } from '../../src/contract/kinds/usualOptions.ts';
import { areSamePieces } from '../../src/studio/resist/resistCoat.ts';
import { coatReady, isReadyAt } from '../../src/studio/resist/coatReady.ts';
import { days, since } from '../../src/studio/ids.ts';
import { toldWhere } from '../../src/studio/remind/toldWhere.ts';
import { resists } from '../../src/studio/resist/overnight.ts';
import { choiceWords } from '../../src/words/desk/choiceWords.ts';

/** A coat older than this is dry, or its member forgot to take it off the list. */
const longAgo = days(14);

export const coatOn = logs({
  name: 'on',
  about: (w) => w.coat.onAbout,
  who: 'member',
  private: true,
  form: ['kind', 'pieces', 'when', 'for', 'temperature'],
  options: {
    kind: needed(
      pick(
        resists,
        {
          'wax-emulsion': 'wax',
          emulsion: 'wax',
          'cold-wax': 'wax',
          'melted-wax': 'hot-wax',
          hotwax: 'hot-wax',
          paraffin: 'hot-wax',
          'liquid-latex': 'latex',
          'masking-tape': 'tape',
        },
        choiceWords.resist,
      ),
      (w) => w.coat.kindOf,
    ),
    pieces: needed(pieces, (w) => w.coat.pieces),
    when: optional(hourPast, (w) => w.coat.whenOn),
    for: optional(hourAhead, (w) => w.coat.plannedFor),
    temperature: optional(degrees(-10, 50), (w) => w.coat.temperature),
    humidity: optional(percent(1, 100, '60'), (w) => w.coat.humidity),
    note: noteOption,
  },
  async run(v, context) {
    const { words, book, now, member } = context;
    const stamp = entryStamp(context, v);
    const { at } = stamp;
    if (since(at, now) > longAgo) return refusal(words.coat.longAgo(at));

    const studio = await book.studio();
    const alike = (await book.coats()).filter(
      ({ by, pieces: others, disowned, onAt }) =>
        by === member && !disowned && areSamePieces(others, v.pieces) && since(onAt, at) <= longAgo,
    );
    const under = alike.findLast(({ resist }) => resist === v.kind);
    if (under && under.onAt > at) return refusal(words.coat.beforeLayer(under.id, under.onAt));

    // A coat over a layer that is still damp dries in the same air.
    const overDamp = under && !isReadyAt(coatReady(under, studio), at) ? under : undefined;
    const temperature = v.temperature ?? overDamp?.temperature ?? studio.drying.temperature;
    const humidity =
      v.humidity === undefined ? (overDamp?.humidity ?? studio.drying.humidity) : fraction(v.humidity / 100);
    const air = definedOnly({ temperature, humidity });
    if (coatReady({ resist: v.kind, onAt: at, ...air }, studio) === 'never')
      return refusal(words.coat.neverOpens);
    const { entry, coats } = await book.logCoat(
      {
        kind: 'on',
        resist: v.kind,
        pieces: v.pieces,
        ...definedOnly({ plannedFor: v.for, ...air, over: under?.seq }),
      },
      stamp,
    );
    const coat = coats.find(({ seq }) => seq === entry.seq);
    if (!coat) throw new Error(`entry ${entry.id} put no coat on`);
    return coatReply(coat, studio, context, {
      ...definedOnly({ under }),
      others: alike.filter((one) => one !== under),
      told: toldWhere(member, studio, await book.platformsOf(member)),
    });
  },
});
