import type { DoubtfulDose } from '../../studio/batch/doubtfulDose.ts';
import type { Asking, Reply } from '../../contract/contract.ts';
import { printLine } from '../../contract/parseLine.ts';

/** Asks about a dose that few would give, before anything is logged: the same line again, with a yes. */
export const askDose = (doubt: DoubtfulDose, { words: { added: w }, typed }: Asking): Reply => ({
  kind: 'choice',
  title: w.doubtful(doubt, typed['amount'] ?? ''),
  private: true,
  actions: [
    { label: w.change, line: printLine(['added'], typed), press: 'edit' },
    { label: w.reallyAdded, line: printLine(['added'], { ...typed, sure: 'yes' }), press: 'run' },
  ],
  data: {
    option: 'sure',
    choices: [{ label: 'yes', value: 'yes' }],
    ...(doubt.what === 'flocculant' ? { times: doubt.times } : { percentOfDry: doubt.percent }),
  },
});
