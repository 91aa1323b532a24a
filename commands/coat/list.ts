import { coatData } from '../../src/replies/resist/coatData.ts';
import { asks } from '../../src/contract/contract.ts';
import { coatDoubt } from '../../src/studio/resist/coatDoubt.ts';
import { coatReady, isReadyAt } from '../../src/studio/resist/coatReady.ts';

/** Two presses for the first coat that is ready: more would be a wall of buttons. */
const endsOf = (resist: string) => (resist === 'latex' ? 'peeled' : 'glazed');

export const listCoats = asks({
  name: 'list',
  about: (w) => w.coat.listAbout,
  who: 'member',
  options: {},
  async run(_values, { words, book, now, member, role }) {
    const { coat: w } = words;
    const studio = await book.studio();
    const names = new Map((await book.members()).map(({ id, name }) => [id, name]));
    const coats = (await book.coats())
      .filter(({ by, disowned }) => role === 'keeper' || (by === member && !disowned))
      .toSorted((a, b) => a.onAt - b.onAt)
      .map((coat) => {
        const ready = coatReady(coat, studio);
        return {
          coat,
          ready: isReadyAt(ready, now),
          ...(ready !== 'never' && { readyAt: ready.readyAt }),
        };
      });
    const done = coats.filter(({ ready }) => ready);
    return {
      kind: 'answer',
      title: coats.length === 0 ? w.none : w.listed(coats.length, done.length),
      facts: coats.map(({ coat, readyAt, ready }) => ({
        label: w.row(
          coat.id,
          coat.pieces,
          coat.by === member ? undefined : { member: coat.by, name: names.get(coat.by) ?? words.someone },
        ),
        text: w.rowText(coat.resist, readyAt, ready, {
          peel: coat.resist === 'latex',
          doubt: coatDoubt(coat),
        }),
      })),
      reasons: coats.length === 0 || studio.zoneSet ? [] : [words.studio.noZone],
      actions: done.slice(0, 3).map(({ coat: { id, resist } }) => ({
        label: w.endedOne(endsOf(resist), id),
        line: `/coat off coat:${id} how:${endsOf(resist)}`,
        press: 'run',
      })),
      data: { coats: coats.map(({ coat }) => coatData(coat, studio, now)) },
    };
  },
});
