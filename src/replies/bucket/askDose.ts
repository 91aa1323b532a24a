import { choice, pressToEdit, pressToRun } from '../../contract/replyParts.ts';
import type { DoubtfulDose } from '../../studio/batch/doubtfulDose.ts';
import type { Asking, Reply } from '../../contract/contract.ts';

/** Asks for confirmation of an unusual dose before it is logged. The yes button repeats the line. */
export const askDose = (doubt: DoubtfulDose, { words: { added: w }, typed }: Asking): Reply =>
  choice(
    w.doubtful(doubt, typed['amount'] ?? ''),
    [pressToEdit(w.change, 'added', typed), pressToRun(w.reallyAdded, 'added', { ...typed, sure: 'yes' })],
    {
      option: 'sure',
      choices: [{ label: 'yes', value: 'yes' }],
      ...(doubt.what === 'flocculant' ? { times: doubt.times } : { percentOfDry: doubt.percent }),
    },
  );
