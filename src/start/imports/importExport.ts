import { isDeepStrictEqual } from 'node:util';
import { definedOnly } from '../../definedOnly.ts';
import type { Clock } from '../../clock.ts';
import { exportHead } from '../../replies/export/exportJson.ts';
import { ImportProblem } from '../../store/imports/importProblem.ts';
import { linesOf } from '../../store/imports/linesOf.ts';
import { readExport, type ExportHead } from '../../store/imports/readExport.ts';
import type { Store } from '../../store/openStore.ts';
import type { Logbook } from '../../studio/logbook/ports.ts';

/** What of an export does not follow from its entries. */
const whatDiffers = (said: ExportHead, found: object): string | undefined => {
  const [before, after] = [new Map(Object.entries(said)), new Map(Object.entries(found))];
  before.delete('exportedAt');
  after.delete('exportedAt');
  for (const [key, value] of after) if (!isDeepStrictEqual(before.get(key), value)) return key;
  return undefined;
};

const checkHead = async (book: Logbook, clock: Clock, said: ExportHead): Promise<void> => {
  const found = JSON.parse(JSON.stringify(await exportHead(book, clock.now(), {})));
  const what = whatDiffers(said, found);
  if (what !== undefined) throw new ImportProblem({ kind: 'differs', what });
};

export interface ImportOptions {
  name?: string | undefined;
  server?: string | undefined;
  /** Takes the entries alone: the states in the file need not follow from them. */
  anew: boolean;
}

/** Brings an export in as a new studio. Throws an ImportProblem, and then has changed nothing. */
export const importExport = async (
  file: string,
  { store, clock }: { store: Pick<Store, 'bringStudioIn'>; clock: Clock },
  { name: wanted, server, anew }: ImportOptions,
) => {
  const lines = linesOf(file);
  try {
    const { head, entries } = readExport(lines);
    const name = wanted ?? head.studio.name;
    if (name === undefined) throw new ImportProblem({ kind: 'no-name' });
    const { members, notes } = head;
    const brought = { name, members, notes, entries, ...definedOnly({ server }) };
    const done = await store.bringStudioIn(brought, async (book) => {
      if (!anew) await checkHead(book, clock, head);
    });
    return { ...done, name, members: members.length };
  } finally {
    lines.return(undefined);
  }
};
