import { coatData } from '../../src/replies/resist/coatData.ts';
import { asks, toEdit, toRun } from '../../src/contract/contract.ts';
import { coatDoubt } from '../../src/studio/resist/coatDoubt.ts';
import { fromOption, longList } from '../../src/contract/kinds/longList.ts';
import { coatReady, isReadyAt } from '../../src/studio/resist/coatReady.ts';

/** Two buttons, for the first coat that is ready only: buttons for every coat would fill the screen. */
const endsOf = (resist: string) => (resist === 'latex' ? 'peeled' : 'glazed');

export const listCoats = asks({
  name: 'list',
  about: (w) => w.coat.listAbout,
  who: 'member',
  options: { from: fromOption },
  async run(v, asking) {
    const { words, book, now, member, role } = asking;
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
    const { rows, more } = longList(coats, ({ coat }) => coat.id, v.from, ['coat', 'list'], asking);
    return {
      kind: 'answer',
      title: coats.length === 0 ? w.none : w.listed(coats.length, done.length),
      facts: rows.map(({ coat, readyAt, ready }) => ({
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
      actions:
        coats.length === 0
          ? [toEdit(w.putOn, '/coat on')]
          : done
              .slice(0, 3)
              .map(({ coat: { id, resist } }) =>
                toRun(w.endedOne(endsOf(resist), id), `/coat off coat:${id} how:${endsOf(resist)}`),
              ),
      more,
      data: { coats: rows.map(({ coat }) => coatData(coat, studio, now)) },
    };
  },
});
