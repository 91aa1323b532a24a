import { expect } from 'vitest';
import type { Desk, Request } from '../../../src/contract/desk.ts';
import { openDesk } from '../../../src/desk/dispatch.ts';
import { printLine } from '../../../src/contract/parseLine.ts';
import { speak } from '../../../src/desk/speak.ts';
import { commands } from '../../../src/start/registry.ts';
import { seq, type Instant, type MemberId, type Role, type StudioId } from '../../../src/studio/ids.ts';
import type { Store } from '../../../src/store/openStore.ts';
import { replyJson } from '../../../src/terminal/plainReply.ts';
import { handbook } from '../handbook.ts';
import { en } from '../../../src/words/en.ts';
import { answerSchema, type Answer } from '../discord/answerSchemas.ts';
import { noonPlus } from '../store/storeEvents.ts';
import { openTestStore } from '../store/storeFile.ts';

/** Every number in a value. They are collected before JSON turns non-finite ones into null. */
export const numbersIn = (value: unknown): number[] => {
  if (typeof value === 'number') return [value];
  return typeof value === 'object' && value !== null ? Object.values(value).flatMap(numbersIn) : [];
};

export interface GlazeRoom {
  store: Store & { file: string };
  desk: Desk;
  studio: StudioId;
  /** Runs a member's line, so many minutes after noon on 1 March 2026. */
  say(minutes: number, line: string, as?: string): Promise<Answer>;
  keeper(minutes: number, line: string, as?: string): Promise<Answer>;
  /** Sends a request as platforms do, so that it can be repeated or sent as another member. */
  request(minutes: number, request: Pick<Request, 'path' | 'typed'> & Partial<Request>): Promise<Answer>;
  member(name: string): Promise<MemberId>;
  bugs: unknown[];
}

const settings = {
  pail: '19l',
  volume: '15l',
  gravity: '1.42-1.46',
  seconds: '12-16',
  cup: 'ford4',
  solids: '2.6',
  rest: '4h',
  mesh: '80',
};

export const gullGreyLine = (changed: Record<string, string> = {}): string =>
  printLine(['bucket', 'add'], { name: 'Gull Grey', nick: 'gg', ...settings, ...changed });

/** The real desk on a real store in its own file. */
export const openGlazeRoom = async (): Promise<GlazeRoom> => {
  const store = await openTestStore();
  const bugs: unknown[] = [];
  const report = (error: unknown) => {
    bugs.push(error);
    return `bug-${bugs.length}`;
  };
  const desk = openDesk({
    commands,
    books: store.books,
    words: en,
    handbook,
    labels: {
      roomOf: () => undefined,
      print: async (sheet) => (await import('../../../src/labels/labelsPdf.ts')).labelsPdf(sheet),
    },
    report,
  });
  const studio = await store.people.studioOf('terminal', 'here', 'Wrackline Clay Co-op');
  const member = (name: string) => store.people.memberOf(studio, 'terminal', name, name);
  let lines = 0;
  const shown = async (reply: Awaited<ReturnType<Desk['dispatch']>>, now: Instant) => {
    for (const number of numbersIn(reply.data)) expect(number).toSatisfy(Number.isFinite);
    const { zone } = await store.books.read(studio, (book) => book.studio());
    return answerSchema.parse(JSON.parse(JSON.stringify(replyJson(reply, { now, zone }))));
  };
  const spoken = async (minutes: number, line: string, as: string, role: Role) => {
    const at = noonPlus(minutes);
    const speaker = { studio, member: await member(as), role, now: at };
    const reply = await speak(line, `test:${++lines}`, speaker, { desk, words: en });
    return shown(reply, at);
  };
  return {
    store,
    desk,
    studio,
    bugs,
    member,
    say: (minutes, line, as = 'Wren') => spoken(minutes, line, as, 'member'),
    keeper: (minutes, line, as = 'Tove') => spoken(minutes, line, as, 'keeper'),
    async request(minutes, request) {
      const at = noonPlus(minutes);
      const who = { studio, member: await member('Wren'), role: 'member', now: at } as const;
      const reply = await desk.dispatch({ key: `test:${++lines}`, ...who, ...request });
      return shown(reply, at);
    },
  };
};

/** A room with Gull Grey in it: 15 l in a 19 l pail, 1.42 to 1.46, 12 to 16 s by Ford #4, rest 4 h. */
export const openRoomWithGullGrey = async (
  ...changed: [name: string, value: string][]
): Promise<GlazeRoom> => {
  const room = await openGlazeRoom();
  const added = await room.keeper(0, gullGreyLine(Object.fromEntries(changed)));
  expect(added).toMatchObject({ ok: true, data: { entry: '1-1' } });
  return room;
};

/** The position in the log for which an action was offered. */
export const afterOf = (line: string) => seq(Number(/after:(\d+)/.exec(line)?.[1]));

/** The first bucket's state, without the position of its last entry, which an undo changes. */
export const stateOf = ({ store, studio }: GlazeRoom) =>
  store.books.read(studio, async (book) => {
    const [state] = await book.buckets();
    if (!state) throw new Error('no bucket');
    const { seq: _seq, ...rest } = state;
    return rest;
  });
