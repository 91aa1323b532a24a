import { asks } from '../src/contract/contract.ts';
import { text } from '../src/contract/kinds/texts.ts';

export const help = asks({
  name: 'help',
  about: (w) => w.help.about,
  who: 'member',
  options: { about: { kind: text(60, 'reading'), needed: false, about: (w) => w.help.which } },
  async run(v, { words, role }) {
    const w = words.help;
    const wanted = v.about?.replace(/^\//, '').toLowerCase();
    const jobs = w.jobs.filter(({ keeper }) => !keeper || role === 'keeper');
    const fitting =
      wanted === undefined
        ? jobs
        : jobs.filter(({ job, line }) => `${job} ${line}`.toLowerCase().includes(wanted));
    return {
      kind: 'answer',
      title: fitting.length > 0 || wanted === undefined ? w.title : w.nothing(wanted),
      facts: (fitting.length > 0 ? fitting : jobs).map(({ job, line }) => ({ label: [job], text: [line] })),
      reasons: [w.typing],
      data: { jobs: (fitting.length > 0 ? fitting : jobs).map(({ job, line }) => ({ job, line })) },
    };
  },
});
