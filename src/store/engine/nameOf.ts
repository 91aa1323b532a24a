import { isAddress } from './isAddress.ts';
import { StoreProblem } from './storeProblem.ts';

/** What sentences and logs call a logbook: the file's path, or the database's address without its password. */
export const nameOf = (where: string): string => {
  if (!isAddress(where)) return where;
  try {
    const { protocol, username, host, pathname } = new URL(where);
    return `${protocol}//${username === '' ? '' : `${username}@`}${host}${pathname}`;
  } catch {
    // What cannot be read may hold a password anywhere.
    throw new StoreProblem('bad-address', 'DATABASE_URL', 'not an address');
  }
};
