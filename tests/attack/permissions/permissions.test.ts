import { setTimeout as sleep } from 'node:timers/promises';
import { describe, expect, it, onTestFinished } from 'vitest';
import { isGroup } from '../../../src/contract/contract.ts';
import { parseLine } from '../../../src/contract/parseLine.ts';
import { speak } from '../../../src/desk/speak.ts';
import { commands } from '../../../src/start/registry.ts';
import { en } from '../../../src/words/en.ts';
import { openDiscordRoom } from '../../helpers/discord/discordRoom.ts';
import { slash, type Place } from '../../helpers/discord/discordInteraction.ts';
import { Phone, phoneOf, sayAsKeeper, testRoom } from '../../helpers/room/roomServer.ts';
import { runSay } from '../../helpers/sayProcess.ts';
import { newLogbook } from '../../helpers/store/storeFile.ts';
import { finer, prepared, rows, type Row } from './table.ts';
import { savedIn } from './savedIn.ts';

type Role = 'guest' | 'member' | 'keeper';

const rank = { guest: 0, member: 1, keeper: 2 };
const may = (role: Role, { least }: Pick<Row, 'least'>) => rank[role] >= rank[least];

/** What came of a row: whether it was refused, the sentence that said so, and whether anything was saved. */
interface Cell {
  line: string;
  refused: boolean;
  sentence: string;
  saved: boolean;
}

const every = [...rows, ...finer];

/** Every cell of one role on one platform, in the order of the table. */
const expectCells = (role: Role, cells: readonly Cell[]): void => {
  expect(cells.map(({ line }) => line)).toEqual(every.map(({ line }) => line));
  const wrong = cells.filter(({ refused }, i) => refused === may(role, every[i] ?? { least: 'keeper' }));
  expect(wrong).toEqual([]);
  for (const { line, refused, sentence, saved } of cells) {
    if (!refused) continue;
    expect({ line, saved }).toEqual({ line, saved: false });
    expect(sentence, line).toMatch(/^\S.{10,}[.!]/s);
  }
};

const tried = async (
  file: string,
  line: string,
  run: () => Promise<{ refused: boolean; sentence: string }>,
): Promise<Cell> => {
  const before = await savedIn(file);
  const { refused, sentence } = await run();
  return { line, refused, sentence, saved: (await savedIn(file)) !== before };
};

const isRefusal = (kind: unknown): boolean => kind !== 'answer' && kind !== 'choice';

it('every command has a row, and every row a command', () => {
  const paths = commands.flatMap((command) =>
    isGroup(command) ? command.leaves.map(({ name }) => `${command.name} ${name}`) : [command.name],
  );
  expect([...new Set(rows.map(({ command }) => command))].toSorted()).toEqual(paths.toSorted());
  for (const { line, command } of every) {
    const parsed = parseLine(line, commands);
    expect(parsed.ok && parsed.value.path.join(' ')).toBe(command);
  }
});

const hands = ['Hand One', 'Hand Two', 'Hand Three', 'Hand Four', 'Hand Five', 'Hand Six'];

/** The first word of a command; an undo belongs to the entry that it takes back. */
const groupOf = ({ command }: Row): string => (command === 'undo' ? 'sieved' : (command.split(' ')[0] ?? ''));

/** Says a line, and waits when the phone has used up its share of a busy machine. */
const sayInTime = async (phone: Phone, line: string): ReturnType<Phone['say']> => {
  for (;;) {
    const got = await phone.say(line);
    if (got.status !== 429) return got;
    await sleep(1_000 * Number(got.headers['retry-after'] ?? 1));
  }
};

describe('in the room', () => {
  it.each<Role>(['guest', 'member', 'keeper'])(
    'a %s may what the table says, and nothing else',
    async (role) => {
      const open = await testRoom();
      await phoneOf(open, 'Odile', { code: open.keeperCode, keeper: true });
      await phoneOf(open, 'Mara');
      for (const line of prepared) await sayAsKeeper(open, line);
      // A phone's share of the room's time is small, so that they take turns; what belongs together is one phone's.
      const phones: Phone[] = [];
      for (const name of role === 'guest' ? [] : hands) {
        phones.push(await phoneOf(open, name));
        if (role === 'keeper') await sayAsKeeper(open, `/studio keeper member:"${name}" is:keeper`);
      }
      const groups = [...new Set(every.map(groupOf))];
      const cells: Cell[] = [];
      for (const row of every) {
        const phone = phones[groups.indexOf(groupOf(row)) % hands.length] ?? new Phone(open.port);
        cells.push(
          await tried(open.file, row.line, async () => {
            const { status, json } = await sayInTime(phone, row.line);
            if (status !== 200) return { refused: true, sentence: String(json['said']) };
            const { kind, title } = json['reply'] as { kind: string; title: (string | { said: string })[] };
            return {
              refused: isRefusal(kind),
              sentence: title.map((one) => (typeof one === 'string' ? one : one.said)).join(''),
            };
          }),
        );
      }
      expectCells(role, cells);
    },
  );
});

describe('on Discord', () => {
  it.each<Role>(['guest', 'member', 'keeper'])(
    'a %s may what the table says, and nothing else',
    async (role) => {
      const room = await openDiscordRoom(commands);
      onTestFinished(room.stop);
      const { discord, store, ports } = room;
      const { desk, clock } = ports;
      let kind: string | undefined;
      ports.desk = {
        ...desk,
        async dispatch(request) {
          const reply = await desk.dispatch(request);
          ({ kind } = reply);
          return reply;
        },
      };
      const studio = await store.people.studioOf('discord', discord.world.guildId, '');
      const tove = await store.people.memberOf(studio, 'discord', discord.person('Tove').id, 'Tove');
      for (const [i, line] of prepared.entries()) {
        const speaker = { studio, member: tove, role: 'keeper', now: clock.now() } as const;
        const reply = await speak(line, `test:${i}`, speaker, { desk, words: en });
        expect(reply.kind, line).toBe('answer');
      }
      const channel = discord.channel();
      const mara: Place = { by: discord.person('Mara'), channel };
      const odile: Place = { by: discord.person('Odile', { manages: true }), channel };
      // A direct message comes from no server: whoever writes one to the bot is nobody’s member.
      const nobody: Place = {
        by: discord.person('Nobody'),
        channel: { id: '900000000000000001', kind: 'dm' },
      };
      for (const { by } of [mara, odile]) await store.people.memberOf(studio, 'discord', by.id, by.name);
      const place = { guest: nobody, member: mara, keeper: odile }[role];
      const cells: Cell[] = [];
      for (const { line } of every) {
        const parsed = parseLine(line, commands);
        if (!parsed.ok) throw new Error(line);
        cells.push(
          await tried(room.file, line, async () => {
            kind = undefined;
            const { message, ephemeral } = await discord.reply(
              slash(place, parsed.value.path, parsed.value.typed),
            );
            const refused = isRefusal(kind);
            if (refused) expect(ephemeral).toBe(true);
            return { refused, sentence: message.content };
          }),
        );
      }
      expectCells(role, cells);
    },
  );
});

/** Whoever can run the program has the operator’s trust and says who they are: so there are no guests. */
describe('at a terminal', () => {
  it.each<Role>(['member', 'keeper'])('a %s may what the table says, and nothing else', async (role) => {
    const file = await newLogbook();
    const set = await runSay(file, ['--json', '-'], {
      input: ['@2026-03-01T12:00:00Z Tove keeper', ...prepared, '@2026-03-01T12:01:00Z Mara', '/help'].join(
        '\n',
      ),
    });
    expect(set.code).toBe(0);
    const speaker = role === 'keeper' ? 'Odile keeper' : 'Mara';
    // One process for all that may run, so that what a refusal saves can be seen beside it.
    const ask = async (asked: readonly Row[]) => {
      const input = [`@2026-03-01T12:05:00Z ${speaker}`, ...asked.map(({ line }) => line)].join('\n');
      return (await runSay(file, ['--json', '-'], { input })).answers();
    };
    const refusable = every.filter((row) => !may(role, row));
    const before = await savedIn(file);
    const refusals = await ask(refusable);
    const saved = (await savedIn(file)) !== before;
    const answers = await ask(every.filter((row) => may(role, row)));
    const cells = every.map((row): Cell => {
      const answer = (may(role, row) ? answers : refusals).shift();
      return { line: row.line, refused: isRefusal(answer?.kind), sentence: answer?.title ?? '', saved };
    });
    expectCells(role, cells);
  });
});
