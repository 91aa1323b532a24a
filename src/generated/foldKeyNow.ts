import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join, normalize } from 'node:path';

/** The entry points of folding: parsing rows, then folding entries. */
const roots = ['src/store/entries/eventRow.ts', 'src/studio/bucket/fold/foldBucket.ts'];

const read = (file: string): string => readFileSync(file, 'utf8').replaceAll('\r\n', '\n');

/** Every source file that these import, directly or not, sorted. */
export const foldFiles = (): string[] => {
  const found = new Set<string>();
  const waiting = [...roots];
  for (let file = waiting.pop(); file !== undefined; file = waiting.pop()) {
    if (found.has(file)) continue;
    found.add(file);
    for (const [, from = ''] of read(file).matchAll(/\bfrom\s+'(\.[^']+)'/g))
      waiting.push(normalize(join(file, '..', from)).replaceAll('\\', '/'));
  }
  return [...found].sort();
};

/** A hash of those files. While it is unchanged, cached states are valid. */
export const foldKeyNow = (): string => {
  const hash = createHash('sha256');
  for (const file of foldFiles()) hash.update(`${file}\n${read(file)}\n`);
  return hash.digest('base64url').slice(0, 16);
};

/** The source of the module that exports the key to the store. */
export const foldKeyModule = (): string =>
  `/** Changes when a source file that folding reaches does: states cached by other code are folded anew. Written by npm run build. */
export const foldKey = '${foldKeyNow()}';
`;
