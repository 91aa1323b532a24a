import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { isGroup, type Asking, type Leaf } from '../../src/contract/contract.ts';
import { parseLine } from '../../src/contract/parseLine.ts';
import { slashCommands } from '../../src/discord/render/slashCommands.ts';
import { commands } from '../../src/start/registry.ts';
import { en } from '../../src/words/en.ts';
import { roomPageWords } from '../../src/words/platform/roomPageWords.ts';
import { demoStudio } from '../helpers/demoStudio.ts';
import { handbook } from '../helpers/handbook.ts';
import { commandProblems } from '../helpers/discord/discordCommandRules.ts';

const leaves: [path: string, leaf: Leaf][] = commands.flatMap((command) =>
  isGroup(command)
    ? command.leaves.map((leaf): [string, Leaf] => [`${command.name} ${leaf.name}`, leaf])
    : [[command.name, command] satisfies [string, Leaf]],
);

let demo: Awaited<ReturnType<typeof demoStudio>>;
beforeAll(async () => {
  demo = await demoStudio('2026-05-20T21:00:00Z');
});
afterAll(() => demo.close());

/** Runs work with the rights of a keeper. */
const asking = async <T>(work: (asking: Asking) => T | Promise<T>): Promise<T> => {
  const who = await demo.as('Odile', 'keeper');
  return demo.app.store.books.read(demo.studio, async (book) =>
    work({ ...who, now: demo.now, happenedAt: demo.now, words: en, handbook, book, typed: {} }),
  );
};

describe('the commands together', () => {
  it('keep the limits of the strictest platform', () => {
    expect(commandProblems(JSON.parse(JSON.stringify(slashCommands(commands, en))))).toEqual([]);
  });

  it('are named and described once each', () => {
    expect(new Set(leaves.map(([path]) => path)).size).toBe(leaves.length);
    const abouts = leaves.map(([, leaf]) => leaf.about(en));
    expect(abouts.filter((about, i) => abouts.indexOf(about) !== i)).toEqual([]);
  });

  it('have each a name of a job in the room, no two the same', () => {
    expect(leaves.map(([path]) => path).filter((path) => !(path in roomPageWords.job))).toEqual([]);
    const names = Object.values(roomPageWords.job);
    expect(new Set(names).size).toBe(names.length);
  });

  it('are each in the help, in lines that parse', () => {
    const lines = en.help.jobs.map(({ line }) => line);
    expect(lines.filter((line) => !parseLine(line, commands).ok)).toEqual([]);
    const helped = lines.map((line) => {
      const parsed = parseLine(line, commands);
      return parsed.ok ? parsed.value.path.join(' ') : '';
    });
    const alone = commands.filter((command) => !isGroup(command)).map(({ name }) => name);
    expect(alone.filter((name) => name !== 'help' && !helped.includes(name))).toEqual([]);
  });
});

describe.each(leaves)('/%s', (_path, leaf) => {
  it('is described in one line of at most 100 characters, as is each option', () => {
    const abouts = [leaf.about(en), ...Object.values(leaf.options).map(({ about }) => about(en))];
    for (const about of abouts) expect(about).toMatch(/^[^\n]{1,100}$/u);
  });

  it('asks for at most five options in its form, each its own, the needed ones among them', () => {
    if (!leaf.form) return;
    expect(leaf.form.length).toBeLessThanOrEqual(5);
    expect(leaf.form.filter((name) => !(name in leaf.options))).toEqual([]);
    const needed = Object.entries(leaf.options).flatMap(([name, option]) => (option.needed ? [name] : []));
    expect(needed.filter((name) => !leaf.form?.includes(name))).toEqual([]);
  });

  it('gives an example of each option that reads', async () => {
    const unread: string[] = [];
    for (const [name, { kind }] of Object.entries(leaf.options)) {
      const read = await asking((one) => kind.read(kind.example, one));
      if (!read.ok && read.choices === undefined) unread.push(`${name}:${kind.example}`);
    }
    // Coats and open questions are referred to by number, and the demo has none.
    const own = /^(?:coat:c|reminder:c|question:q)-/;
    expect(unread.filter((one) => !own.test(one))).toEqual([]);
  });

  it('offers only values that it reads', async () => {
    const refused: string[] = [];
    for (const [name, { kind }] of Object.entries(leaf.options)) {
      const picks = typeof kind.control === 'object' ? kind.control.pick : [];
      const suggested = await asking(async (one) => (await kind.suggest?.('', one)) ?? []);
      for (const { value, typed } of [...picks, ...suggested])
        for (const text of [value, ...(typed === undefined ? [] : [typed])]) {
          const read = await asking((one) => kind.read(text, one));
          if (!read.ok) refused.push(`${name}:${text}`);
        }
    }
    expect(refused).toEqual([]);
  });
});
