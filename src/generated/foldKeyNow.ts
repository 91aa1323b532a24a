import { createHash } from 'node:crypto';
import { readFileSync } from 'node:fs';
import { join, normalize } from 'node:path';

/** Where folding a bucket's entries begins: they are read from their rows, then folded. */
const roots = ['src/store/entries/eventRow.ts', 'src/studio/bucket/foldBucket.ts'];

const read = (file: string): string => readFileSync(file, 'utf8').replaceAll('\r\n', '\n');

/** Every source file that folding reaches by its imports, in alphabetical order. */
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

/** A hash of those files: while it stays the same, entries fold to the same states. */
export const foldKeyNow = (): string => {
  const hash = createHash('sha256');
  for (const file of foldFiles()) hash.update(`${file}\n${read(file)}\n`);
  return hash.digest('base64url').slice(0, 16);
};

/** The module that hands the key to the store. */
export const foldKeyModule = (): string =>
  `/** Changes when a source file that folding reaches does: states cached by other code are folded anew. Written by npm run build. */
export const foldKey = '${foldKeyNow()}';
`;
