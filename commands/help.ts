import { emergenciesIn, emergencyReply } from '../src/replies/ask/emergencyReply.ts';
import { asks, optional, type Asking } from '../src/contract/contract.ts';
import { fromOption, longList } from '../src/contract/kinds/longList.ts';
import { text } from '../src/contract/kinds/texts.ts';

/** “help me” is a cry, and so is “help” before whatever happened. */
const cryIn = async (about: string, asking: Asking) => {
  const told = await emergenciesIn(about, asking);
  return told.length > 0 ? told : emergenciesIn(`help ${about}`, asking);
};

export const help = asks({
  name: 'help',
  about: (w) => w.help.about,
  who: 'member',
  atOnce: true,
  options: { about: optional(text(1200, 'reading'), (w) => w.help.which), from: fromOption },
  async run(v, asking) {
    const { words, role } = asking;
    const w = words.help;
    const urgent = v.about === undefined ? [] : await cryIn(v.about, asking);
    const now = await emergencyReply(urgent, v.about ?? '', undefined, asking);
    if (now) return now;
    const wanted = v.about?.replace(/^\//, '').toLowerCase().slice(0, 60);
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
