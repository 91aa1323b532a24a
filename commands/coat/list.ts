import { coatData } from '../../src/replies/resist/coatData.ts';
import { asks, toEdit, toRun, type Action } from '../../src/contract/contract.ts';
import { coatDoubt } from '../../src/studio/resist/coatDoubt.ts';
import { fromOption, longList } from '../../src/contract/kinds/longList.ts';
import type { ResistCoat } from '../../src/studio/resist/resistCoat.ts';
import type { Words } from '../../src/words/words.ts';
import { coatReady, isReadyAt } from '../../src/studio/resist/coatReady.ts';

/** A button for each of so many coats that are ready: more would fill the screen. */
const mostButtons = 3;

const offButton = ({ id, resist }: ResistCoat, w: Words['coat']): Action => {
  const how = resist === 'latex' ? 'peeled' : 'glazed';
  return toRun(w.endedOne(how, id), `/coat off coat:${id} how:${how}`);
};

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
        return { coat, ready: isReadyAt(ready, now), ...(ready !== 'never' && { readyAt: ready.readyAt }) };
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
          : done.slice(0, mostButtons).map(({ coat }) => offButton(coat, w)),
      more,
      data: { coats: rows.map(({ coat }) => coatData(coat, studio, now)) },
    };
  },
});
