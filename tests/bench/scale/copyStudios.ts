import { isAddress } from '../../../src/store/engine/isAddress.ts';
import type { Tell } from './copiedTables.ts';

/** Copies the template, in a file or in a database, until there are as many studios as wanted. */
export const copyStudios = async (where: string, wanted: number, tell: Tell): Promise<void> => {
  if (isAddress(where)) {
    const { copyInPostgres } = await import('./copyInPostgres.ts');
    await copyInPostgres(where, wanted, tell);
  } else {
    const { copyInFile } = await import('./copyInFile.ts');
    copyInFile(where, wanted, tell);
  }
};
