import type { ImportWhy } from '../../store/imports/importProblem.ts';
import { importWords as w } from '../../words/platform/importWords.ts';

/** Why an export is not brought in. */
export const importSentence = (why: ImportWhy, file: string): string => {
  switch (why.kind) {
    case 'not-an-export':
      return w.notAnExport(file);
    case 'newer-format':
      return w.newerFormat(file, why.format);
    case 'a-part':
      return w.aPart(file);
    case 'damaged':
      return w.damaged(file, why.line);
    case 'cut-off':
      return w.cutOff(file, why.line);
    case 'differs':
      return w.differs(file, why.what);
    case 'no-name':
      return w.noName(file);
    case 'exists':
      return w.exists(why.name);
    case 'server-known':
      return w.serverKnown(why.server);
  }
};
