import { asks } from '../src/contract/contract.ts';
import { fromOption, longList } from '../src/contract/kinds/longList.ts';
import { text } from '../src/contract/kinds/texts.ts';

export const help = asks({
  name: 'help',
  about: (w) => w.help.about,
  who: 'member',
  options: {
    about: { kind: text(60, 'reading'), needed: false, about: (w) => w.help.which },
    from: fromOption,
  },
  async run(v, asking) {
    const { words, role } = asking;
    const w = words.help;
    const wanted = v.about?.replace(/^\//, '').toLowerCase();
    const jobs = w.jobs.filter(({ keeper }) => !keeper || role === 'keeper');
    const fitting =
      wanted === undefined
        ? jobs
        : jobs.filter(({ job, line }) => `${job} ${line}`.toLowerCase().includes(wanted));
    const told = fitting.length > 0 ? fitting : jobs;
    const { rows, more } = longList(told, ({ job }) => job, v.from, ['help'], asking);
    return {
      kind: 'answer',
      title: fitting.length > 0 || wanted === undefined ? w.title : w.nothing(wanted),
      facts: rows.map(({ job, line }) => ({ label: [job], text: [line] })),
      reasons: [w.typing],
      more,
      data: { jobs: rows.map(({ job, line }) => ({ job, line })) },
    };
  },
});
