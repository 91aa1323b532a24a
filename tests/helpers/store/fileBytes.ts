import { existsSync, readFileSync } from 'node:fs';

/** Whether a word is anywhere in a database's files, in UTF-8 or either UTF-16. */
export const standsIn = (file: string, word: string): boolean =>
  ['', '-wal', '-shm'].some((end) => {
    if (!existsSync(`${file}${end}`)) return false;
    const bytes = readFileSync(`${file}${end}`);
    const utf16 = Buffer.from(word, 'utf16le');
    return (
      bytes.includes(Buffer.from(word)) ||
      bytes.includes(utf16) ||
      bytes.includes(Buffer.from(utf16).swap16())
    );
  });
