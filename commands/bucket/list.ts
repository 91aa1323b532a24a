import { definedOnly } from '../../src/definedOnly.ts';
import { asks, optional, toEdit } from '../../src/contract/contract.ts';
import { fromOption, longList } from '../../src/contract/kinds/longList.ts';
import { yesNo } from '../../src/contract/kinds/picks.ts';
import { recentUnlogged } from '../../src/replies/verdict/unloggedReply.ts';
import { decide } from '../../src/studio/verdict/decide.ts';

export const listBuckets = asks({
  name: 'list',
  about: (w) => w.bucket.list,
  who: 'member',
  atOnce: true,
  options: { retired: optional(yesNo, (w) => w.bucket.retiredToo), from: fromOption },
  async run(v, asking) {
    const { words, book, now, role } = asking;
    const all = (await book.buckets()).filter(({ retired }) => !retired || v.retired === true);
    const { units, sure } = await book.studio();
    const every = all.map((state) => ({ state, verdict: decide(state, { now, role, sure }) }));
    const noOf = ({ state }: (typeof every)[number]) => String(state.no);
    const { rows, more } = longList(every, noOf, v.from, ['bucket', 'list'], asking);
    const ready = every.filter(({ verdict }) => verdict.step === 'use').length;
    return {
      kind: 'answer',
      title: words.bucket.listTitle(every.length, ready),
      facts: rows.map(({ state, verdict }) => ({
        label: words.bucket.listName(state.no, state.settings.name),
        text: [
          ...words.bucket.listText(verdict, units),
          ...(recentUnlogged(state, now) ? [words.unlogged.inList] : []),
        ],
      })),
      ...(every.length === 0 && role === 'keeper'
        ? { actions: [toEdit(words.bucket.setUp, '/bucket add')] }
        : {}),
      more,
      data: {
        buckets: rows.map(({ state, verdict }) => ({
          number: state.no,
          name: state.settings.name,
          ...definedOnly({ nick: state.settings.nick }),
          step: verdict.step,
          gravity: verdict.gravity,
          window: verdict.window && { low: verdict.window.low, high: verdict.window.high },
          flow: verdict.flow,
          hoursSinceStir: verdict.hoursSinceStir,
          retired: state.retired,
          held: state.hold !== undefined,
          unlogged: recentUnlogged(state, now) !== undefined,
        })),
      },
    };
  },
});
