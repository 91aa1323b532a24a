import { closeSync, openSync, readSync } from 'node:fs';
import { ImportProblem } from './importProblem.ts';

const chunk = 1 << 16;
/** The longest line is the head, which holds every bucket's state. */
const longestLine = 100_000_000;

/** The lines of a file in UTF-8, one after another, so that a large file is never in memory as a whole. */
export function* linesOf(file: string): Generator<string> {
  const handle = openSync(file, 'r');
  try {
    const decoder = new TextDecoder('utf-8', { fatal: true });
    const bytes = Buffer.alloc(chunk);
    let [parts, length, line]: [string[], number, number] = [[], 0, 1];
    const decoded = (size: number): string => {
      try {
        return decoder.decode(bytes.subarray(0, size), { stream: size > 0 });
      } catch {
        throw new ImportProblem(line === 1 ? { kind: 'not-an-export' } : { kind: 'damaged', line });
      }
    };
    for (let size = -1; size !== 0;) {
      size = readSync(handle, bytes, 0, chunk, null);
      const [first = '', ...rest] = decoded(size).split('\n');
      parts.push(first);
      length += first.length;
      if (length > longestLine) throw new ImportProblem({ kind: 'not-an-export' });
      for (const next of rest) {
        yield parts.join('').replace(/\r$/, '');
        line += 1;
        [parts, length] = [[next], next.length];
      }
    }
    yield parts.join('');
  } finally {
    closeSync(handle);
  }
}
