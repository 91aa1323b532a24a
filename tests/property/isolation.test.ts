import fc from 'fast-check';
import { expect, test } from 'vitest';
import { openDesk } from '../../src/desk/dispatch.ts';
import { speak } from '../../src/desk/speak.ts';
import { parseLine } from '../../src/contract/parseLine.ts';
import { commands } from '../../src/start/registry.ts';
import type { MemberId, StudioId } from '../../src/studio/ids.ts';
import type { Store } from '../../src/store/openStore.ts';
import { en } from '../../src/words/en.ts';
import { handbook } from '../helpers/handbook.ts';
import { noonPlus } from '../helpers/store/storeEvents.ts';
import { onPostgres } from '../helpers/postgres/databases.ts';
import { openTestStore } from '../helpers/store/storeFile.ts';

/** A word of each studio’s own; every line of a studio contains it, and nothing of the other may. */
const marks = ['Elsewhere', 'Wrackline'] as const;
type Which = 0 | 1;

const lines = (mark: string): string[] => [
  `/bucket add name:"${mark} grey" gravity:1.42-1.46 pail:19l volume:15l`,
  `/bucket change bucket:1 name:"${mark} blue"`,
  '/bucket retire bucket:1',
  `/bucket hold bucket:1 why:"${mark} lumps"`,
  `/reading bucket:1 gravity:1.45 seconds:14 stirred:yes note:"${mark} says"`,
  `/added bucket:1 what:water amount:300ml note:"${mark} poured"`,
  '/stirred bucket:2 minutes:3',
  `/coat on kind:wax pieces:"${mark} bowls"`,
  '/coat off coat:c-1',
  `/prep piece:"${mark} jug" bucket:1`,
  `/note add title:"${mark} sinks" text:"${mark} uses the left sink."`,
  `/note wanted question:"how does ${mark} thaw frozen glaze in the yard?"`,
  `/ask question:"why would ${mark} sing to the kiln goblins?"`,
  '/note remove note:1',
  '/remind me bucket:1 in:"10 min"',
  '/remind done reminder:asked-1',
  `/studio set name:"${mark} Clay" units:us zone:America/St_Johns`,
  `/studio vessel name:"${mark} cup" tare:85.4g water:100.2g`,
  `/studio session day:tuesday hours:18:00-21:00 name:"${mark} evening"`,
  `/studio material name:"${mark} mud" like:kaolin`,
  `/batch recipe name:"${mark} clear" recipe:"silica 50, kaolin 50"`,
  `/studio keeper member:"${mark} Ilse" is:keeper`,
  '/undo entry:1-1',
  '/undo entry:s-1',
  `/redact name:"${mark}" sure:yes`,
  '/link',
  '/forget-me sure:yes',
];

/** Everything that a keeper of a studio can see: lists, states, the export, questions, reminders, suggestions. */
const shown = [
  '/bucket list',
  '/bucket show bucket:1',
  '/bucket log',
  '/coat list',
  '/note list',
  '/note questions',
  '/remind list',
  '/round',
  '/studio show',
  '/batch recipes',
  '/export as:json',
  '/export as:csv',
  '/faults',
];

interface Step {
  /** The process that says it; a file has one. */
  process: Which;
  which: Which;
  line: number;
  who: 'keeper' | 'member';
}

const step: fc.Arbitrary<Step> = fc.record({
  process: fc.constantFrom<Which>(0, 1),
  which: fc.constantFrom<Which>(0, 1),
  line: fc.nat({ max: lines('').length - 1 }),
  who: fc.constantFrom('keeper', 'member'),
});

/**
 * Two studios in one logbook, with the same platform’s ids wherever a platform would reuse them; on a database two
 * processes serve both.
 */
const openTwo = async () => {
  const first = await openTestStore();
  const stores: readonly [Store, Store] = [
    first,
    onPostgres ? await openTestStore({ file: first.file }) : first,
  ];
  const store: Store = first;
  const bugs: unknown[] = [];
  const report = (error: unknown) => `bug-${bugs.push(error)}`;
  const deskOf = ({ books }: Store) => openDesk({ commands, books, words: en, handbook, report });
  const desks = [deskOf(stores[0]), deskOf(stores[1])] as const;
  const studios = [
    await store.people.studioOf('discord', '700000000000000001', 'one'),
    await store.people.studioOf('discord', '700000000000000002', 'two'),
  ] as const satisfies readonly StudioId[];
  let said = 0;
  const memberOf = (which: Which, who: Step['who']): Promise<MemberId> =>
    // The same Discord user is on both servers: their number is one, their members are two.
    store.people.memberOf(
      studios[which],
      'discord',
      who === 'keeper' ? '800000000000000001' : '800000000000000002',
      `${marks[which]} ${who === 'keeper' ? 'Ilse' : 'Mara'}`,
    );
  const say = async (which: Which, who: Step['who'], line: string, process: Which = 0) => {
    const desk = desks[process];
    said += 1;
    const speaker = {
      studio: studios[which],
      member: await memberOf(which, who),
      role: who,
      now: noonPlus(said),
    } as const;
    return speak(line, `test:${said}`, speaker, { desk, words: en });
  };
  const seenBy = async (which: Which): Promise<string> => {
    const replies = [];
    for (const line of shown)
      for (const process of [0, 1] as const) replies.push(await say(which, 'keeper', line, process));
    for (const [path, option] of [
      [['reading'], 'bucket'],
      [['note', 'change'], 'note'],
      [['undo'], 'entry'],
      [['remind', 'done'], 'reminder'],
      [['coat', 'off'], 'coat'],
      [['studio', 'keeper'], 'member'],
      [['batch', 'plan'], 'recipe'],
    ] as const) {
      const request = {
        key: `suggest:${(said += 1)}`,
        studio: studios[which],
        member: await memberOf(which, 'keeper'),
        role: 'keeper' as const,
        now: noonPlus(said),
        path: [...path],
        typed: {},
      };
      for (const desk of desks) replies.push(await desk.suggest(request, option));
    }
    return JSON.stringify(replies);
  };
  /** What stands in the studio’s own book, without what time changes, as one process reads it. */
  const book = async (which: Which, process: Which = 0) => {
    const keeper = await memberOf(which, 'keeper');
    return stores[process].books.read(studios[which], async (one) =>
      JSON.stringify({
        studio: await one.studio(),
        buckets: await one.buckets(),
        coats: await one.coats(),
        pieces: await one.pieces(),
        fired: await one.fired(),
        latest: await one.latest({ most: 1_000 }),
        notes: await one.notes(),
        questions: await one.openQuestions(noonPlus(0)),
        members: await one.members(),
        reminders: await one.reminders(keeper),
      }),
    );
  };
  const erased = async () => {
    for (const one of stores) await one.erased();
  };
  return { erased, say, seenBy, book, bugs };
};

test('every line of the property is a command that both studios know', () => {
  for (const line of [...lines('Elsewhere'), ...shown]) expect(parseLine(line, commands).ok, line).toBe(true);
});

test('whatever two studios of one logbook do, neither sees anything of the other, and neither changes it', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(step, { minLength: 8, maxLength: 20 }), async (steps) => {
      const { erased, say, seenBy, book, bugs } = await openTwo();
      for (const which of [0, 1] as const) {
        await say(which, 'keeper', lines(marks[which])[0] ?? '');
        await say(which, 'member', '/help');
      }
      for (const { process, which, line, who } of steps) {
        const other = which === 0 ? 1 : 0;
        const before = await book(other);
        const reply = await say(which, who, lines(marks[which])[line] ?? '', process);
        expect(JSON.stringify(reply)).not.toContain(marks[other]);
        // An erasure may still be rewriting the file; it may reach its own studio only.
        await erased();
        expect(await book(other)).toBe(before);
        // What a process remembers is never older than what another has written.
        expect(await book(which, process === 0 ? 1 : 0)).toBe(await book(which, process));
        expect(await book(other, 1)).toBe(before);
      }
      for (const which of [0, 1] as const) {
        const seen = await seenBy(which);
        expect(seen).not.toContain(marks[which === 0 ? 1 : 0]);
      }
      expect(bugs).toEqual([]);
    }),
    // Each run is long: to shrink a failure would take longer than the test may.
    { numRuns: 8, endOnFailure: true },
  );
});
