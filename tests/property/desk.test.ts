import fc from 'fast-check';
import { expect, test } from 'vitest';
import { isGroup, type Leaf } from '../../src/contract/contract.ts';
import { printLine } from '../../src/contract/parseLine.ts';
import { commands } from '../../src/start/registry.ts';
import { openGlazeRoom, gullGreyLine, type GlazeRoom } from '../helpers/room/glazeRoom.ts';

interface Spoken {
  path: string[];
  leaf: Leaf;
}
const leaves: Spoken[] = commands.flatMap((command) =>
  isGroup(command)
    ? command.leaves.map((leaf) => ({ path: [command.name, leaf.name], leaf }))
    : [{ path: [command.name], leaf: command }],
);

const bucketNames = ['gg', 'Gull Grey', '1', '2', 'heron', '3', 'gull', 'brine'];
const oddities = [
  '',
  ' ',
  '0',
  '-1',
  '1e9',
  '1e-9',
  '999999999999999999999',
  'NaN',
  'constructor',
  '__proto__',
  'toString',
  'yes',
  'no',
  'now',
  'tomorrow',
  'last night 9pm',
  '1.44',
  '1.42-1.46',
  '12-16',
  '450 ml',
  '2 lb 3 oz',
  '1,5 l',
  '230g',
  '7cm',
  '3 min',
  '18C',
  '80%',
  'ford4',
  'water',
  'dry',
  'flocculant',
  'glaze',
  'none',
  'cake',
  'lumps, skin',
  "won't run",
  'thick',
  '1-2',
  '1-1',
  's-1',
  'c-1',
  'p-1',
  '@everyone',
  '🏺',
  'שלום',
  '“',
  '"',
  "'",
  '\\',
  'after:3',
  'bucket:gg',
  '\u0000',
  'a'.repeat(5000),
];

/** What somebody may type for an option: a valid value, another option's value, or nothing. */
const typedFor = ({ leaf }: Spoken): fc.Arbitrary<Record<string, string>> =>
  fc.record(
    Object.fromEntries(
      Object.entries(leaf.options).map(([name, { kind }]) => {
        const { control } = kind;
        const picks = typeof control === 'object' ? control.pick.map(({ value }) => value) : [];
        const bucket = name === 'bucket' || name === 'from' || name === 'first' || name === 'second';
        const fitting = bucket ? bucketNames : [kind.example, ...picks];
        return [
          name,
          fc.oneof(
            { weight: 6, arbitrary: fc.constantFrom(...fitting) },
            { weight: 2, arbitrary: fc.constantFrom(...oddities) },
            { weight: 1, arbitrary: fc.string({ unit: 'binary', maxLength: 12 }) },
          ),
        ];
      }),
    ),
    {
      requiredKeys: Object.entries(leaf.options).flatMap(([name, { needed }]) => (needed ? [name] : [])),
    },
  );

const spoken = fc.constantFrom(...leaves).chain((one) =>
  fc.record({
    path: fc.constant(one.path),
    typed: typedFor(one),
    keeper: fc.boolean(),
    wait: fc.constantFrom(0, 1, 8, 20, 300, 12_000),
  }),
);

const openBusyRoom = async (): Promise<GlazeRoom> => {
  const room = await openGlazeRoom();
  for (const line of [
    gullGreyLine(),
    '/bucket add name:Heron pail:10l volume:6l gravity:1.5-1.56 seconds:20-30 cup:zahn2 cautions:gloves',
    '/bucket add name:"Brine White"',
    '/studio vessel name:"steel cup" tare:85.4g water:100.2g',
  ])
    await room.keeper(0, line);
  return room;
};

const never = /undefined|\bNaN\b|\[object|Infinity|\bnull\b/;

test('whatever is typed, there is an answer or a refusal that a person can read, and never a bug', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(spoken, { minLength: 1, maxLength: 12 }), async (lines) => {
      const room = await openBusyRoom();
      let minute = 1;
      for (const { path, typed, keeper, wait } of lines) {
        minute += wait;
        const line = printLine(path, typed);
        const answer = await room.request(minute, { path, typed, role: keeper ? 'keeper' : 'member' });
        expect(room.bugs, line).toEqual([]);
        expect(answer.kind, line).not.toBe('error');
        const read = [answer.title, ...answer.reasons, ...answer.dont, ...answer.cautions];
        const shown = [...read, ...answer.facts.flatMap(({ label, text }) => [label, text])];
        for (const sentence of shown)
          if (!Object.values(typed).some((one) => sentence.includes(one.trim().slice(0, 20))))
            expect(sentence).not.toMatch(never);
        if (answer.kind !== 'answer') expect(answer.private, line).toBe(true);
        if ('verdict' in answer.data && answer.kind === 'answer') {
          expect(answer.facts.length).toBeLessThanOrEqual(3);
          expect(answer.actions.length).toBeLessThanOrEqual(3);
        }
      }
    }),
    { numRuns: 150 },
  );
});

test('what is offered can be pressed at once, by whoever it was offered to', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(spoken, { minLength: 1, maxLength: 8 }), fc.nat(), async (lines, which) => {
      const room = await openBusyRoom();
      let minute = 1;
      for (const { path, typed, keeper, wait } of lines) {
        minute += wait;
        const answer = await room.request(minute, { path, typed, role: keeper ? 'keeper' : 'member' });
        const action = answer.actions[which % Math.max(1, answer.actions.length)];
        if (answer.kind !== 'answer' || !action) continue;
        // Actions that open a form first are incomplete as lines.
        if (!/after:\d+/.test(action.line)) continue;
        const pressed = await (keeper ? room.keeper : room.say)(minute, action.line, 'Wren');
        expect(pressed, action.line).toMatchObject({ kind: 'answer' });
        expect(room.bugs).toEqual([]);
      }
    }),
    { numRuns: 80 },
  );
});
