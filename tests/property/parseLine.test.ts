import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isGroup } from '../../src/contract/contract.ts';
import { parseLine, printLine } from '../../src/contract/parseLine.ts';
import { commands } from '../../src/start/registry.ts';
import { seq } from '../../src/studio/ids.ts';

const leaves = commands.flatMap((command) =>
  isGroup(command)
    ? command.leaves.map((leaf) => ({ path: [command.name, leaf.name], leaf }))
    : [{ path: [command.name], leaf: command }],
);

const words = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 40 }),
  fc.constantFrom(
    'Gull Grey',
    '"Gull Grey"',
    '“curly”',
    'it\'s 5" deep',
    "'",
    '"',
    '\\',
    '\\"',
    'bucket:gg',
    'note: bucket:gg amount:1l',
    'after:3',
    '/undo entry:1-1',
    '„Möwe“ «gris»',
    'two\nlines',
    '1,5 l',
    '🏺',
  ),
);

const typedLine = fc.constantFrom(...leaves).chain(({ path, leaf }) =>
  fc.record({
    path: fc.constant(path),
    typed: fc.record(Object.fromEntries(Object.keys(leaf.options).map((name) => [name, words])), {
      requiredKeys: [],
    }),
    after: fc.option(fc.integer({ min: 1, max: 999_999_999 }).map(seq), { nil: undefined }),
  }),
);

describe('a line', () => {
  it('that is printed reads back as what it was printed from', () => {
    fc.assert(
      fc.property(typedLine, ({ path, typed, after }) => {
        // A terminal's line contains no NUL: it is removed everywhere.
        const kept = Object.fromEntries(
          Object.entries(typed).map(([name, value = '']) => [name, value.replaceAll('\0', '')]),
        );
        const line = printLine(path, kept, after);
        expect(parseLine(line, commands)).toEqual({
          ok: true,
          value: { path, typed: kept, ...(after !== undefined && { after }) },
        });
      }),
      { numRuns: 3000 },
    );
  });

  it('of any characters is read or refused, and nothing of it is lost or made up', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...leaves),
        fc.array(fc.oneof(words, fc.constantFrom(' ', 'note:', 'bucket:', 'amount:', '“', '"')), {
          maxLength: 8,
        }),
        ({ path }, parts) => {
          const line = `/${path.join(' ')} ${parts.join('')}`;
          const read = parseLine(line, commands);
          if (!read.ok) return;
          const plain = line.replaceAll('\0', '').replaceAll('\\', '');
          for (const value of Object.values(read.value.typed))
            expect(plain).toContain(value.replaceAll('\\', ''));
        },
      ),
      { numRuns: 3000 },
    );
  });
});
