import { describe, expect, it } from 'vitest';
import { rooms } from './rooms.ts';
import { sourceFiles, trespasses, trespassesIn } from './trespasses.ts';

/** Files that each break a different rule. */
const planted: [file: string, text: string][] = [
  ['src/glaze/slurry/a.ts', "import { openStore } from '../../store/openStore.ts';"],
  ['src/glaze/statistics/a.ts', "import { massBalance } from '../slurry/massBalance.ts';"],
  ['src/glaze/water/a.ts', "import type { Studio } from '../../studio/settings/studio.ts';"],
  ['src/glaze/flow/a.ts', "import { readFileSync } from 'node:fs';"],
  ['src/glaze/air/a.ts', "import { addDays } from 'date-fns/addDays';"],
  ['src/glaze/body/a.ts', "export { decide } from '../../studio/verdict/decide.ts';"],
  ['src/glaze/materials/a.ts', "export const late = () => import('../../start/app.ts');"],
  ['src/glaze/materials/b.ts', "export type App = import('../../start/app.ts').App;"],
  ['src/studio/bucket/a.ts', "import type { Reply } from '../../contract/contract.ts';"],
  ['src/studio/contents/a.ts', "import type { BucketState } from '../bucket/bucketState.ts';"],
  ['src/studio/verdict/a.ts', "import { en } from '../../words/en.ts';"],
  ['src/studio/resist/a.ts', "import { systemClock } from '../../clock.ts';"],
  ['src/studio/time/a.ts', "import { addDays } from 'date-fns';"],
  ['src/studio/bucket/b.ts', "import { addDays } from 'date-fns/addDays';"],
  ['src/studio/bucket/c.ts', "import 'node:fs';"],
  ['src/words/verdict/a.ts', "import { decide } from '../../studio/verdict/decide.ts';"],
  ['src/words/verdict/b.ts', "import { readNumeral } from '../../parse/readNumeral.ts';"],
  ['src/words/text/a.ts', "import type { Reply } from '../../contract/contract.ts';"],
  ['src/parse/a.ts', "import { en } from '../words/en.ts';"],
  ['src/contract/a.ts', "import { openStore } from '../store/openStore.ts';"],
  ['src/contract/kinds/a.ts', "import { openApp } from '../../start/app.ts';"],
  ['src/replies/bucket/a.ts', "import type { Tables } from '../../store/migrations/tables.ts';"],
  ['src/replies/verdict/a.ts', "import { bucketCard } from '../bucket/bucketCard.ts';"],
  ['src/desk/a.ts', "import { Client } from 'discord.js';"],
  ['src/store/logbook/a.ts', "import { en } from '../../words/en.ts';"],
  ['src/store/engine/a.ts', "import { openDesk } from '../../desk/dispatch.ts';"],
  ['src/store/logbook/b.ts', "import pg from 'pg';"],
  ['src/store/engine/sqlite/a.ts', "import { openPool } from '../postgres/pool.ts';"],
  ['src/store/migrations/a.ts', "import { openStore } from '../openStore.ts';"],
  ['src/reminders/a.ts', "import { openStore } from '../store/openStore.ts';"],
  ['src/search/a.ts', "import { openStore } from '../store/openStore.ts';"],
  ['src/search/b.ts', "import { loadNotes } from '../seed/loadNotes.ts';"],
  ['src/chart/a.ts', "import { openStore } from '../store/openStore.ts';"],
  ['src/discord/answer/a.ts', "import { openStore } from '../../store/openStore.ts';"],
  ['src/discord/connection/a.ts', "import { startRoom } from '../../room/server/startRoom.ts';"],
  ['src/discord/render/a.ts', "import { decide } from '../../studio/verdict/decide.ts';"],
  ['src/discord/message/a.ts', "import { undo } from '../../../commands/undo.ts';"],
  ['src/terminal/a.ts', "import { startDiscord } from '../discord/connection/startDiscord.ts';"],
  ['src/terminal/b.ts', "import { openStore } from '../store/openStore.ts';"],
  ['src/room/server/a.ts', "import { openStore } from '../../store/openStore.ts';"],
  ['src/room/server/b.ts', "import { replyLines } from '../../terminal/plainReply.ts';"],
  ['src/room/server/c.ts', "import { main } from '../page/main.ts';"],
  ['src/room/page/a.ts', "import { startRoom } from '../server/startRoom.ts';"],
  ['src/room/page/b.ts', "import { Hono } from 'hono';"],
  ['src/room/page/c.ts', "import type { Reply } from '../../contract/contract.ts';"],
  ['commands/a.ts', "import { openStore } from '../src/store/openStore.ts';"],
  ['commands/bucket/a.ts', "import { Hono } from 'hono';"],
  [
    'tests/bench/pots/physics/a.ts',
    "import { waterToAdd } from '../../../../src/glaze/slurry/massBalance.ts';",
  ],
  ['tests/bench/pots/physics/b.ts', "import type { Instant } from '../../../../src/studio/ids.ts';"],
  ['tests/bench/pots/physics/c.ts', "import { systemClock } from '../../../../src/clock.ts';"],
  ['src/attic/a.ts', 'export const nowhere = 1;'],
  ['src/glaze/a.ts', "import { lost } from '../lost/lost.ts';"],
];

/** Imports that are allowed. */
const allowed: [file: string, text: string][] = [
  ['src/studio/verdict/a.ts', "import { water } from '../../glaze/water/waterDensity.ts';"],
  [
    'src/studio/time/a.ts',
    "import type { Clock } from '../../clock.ts';\nimport { addDays } from 'date-fns/addDays';",
  ],
  ['src/words/verdict/a.ts', "import type { Verdict } from '../../studio/verdict/verdict.ts';"],
  ['src/words/bucket/a.ts', "import { hours, type Instant } from '../../studio/ids.ts';"],
  [
    'src/contract/kinds/a.ts',
    "import { a } from '../contract.ts';\nimport { b } from '../../parse/readQuantity.ts';",
  ],
  ['commands/bucket/a.ts', "import { bucketCard } from '../../src/replies/bucket/bucketCard.ts';"],
  [
    'src/discord/answer/a.ts',
    "import { Client } from 'discord.js';\nimport { parseLine } from '../../contract/parseLine.ts';",
  ],
  [
    'src/search/a.ts',
    "import MiniSearch from 'minisearch';\nimport type { Note } from '../studio/handbook.ts';",
  ],
  [
    'src/room/page/a.ts',
    "import type { Wire } from '../wire.ts';\nimport { w } from '../../words/platform/roomPageWords.ts';",
  ],
  ['src/store/entries/a.ts', "import { z } from 'zod';\nimport type { Entry } from '../../studio/entry.ts';"],
  ['src/start/a.ts', "import { openStore } from '../store/openStore.ts';\nimport { pino } from 'pino';"],
];

describe('rooms', () => {
  it('every file imports only from its own room and from those below it', () => {
    expect(trespasses('src', 'commands', 'tests/bench/pots/physics')).toEqual([]);
  });

  it.each(planted)('%s may not: %s', (file, text) => {
    expect(trespassesIn(file, text)).toHaveLength(1);
  });

  it.each(allowed)('%s may: %s', (file, text) => {
    expect(trespassesIn(file, text)).toEqual([]);
  });

  it('says what is wrong and where the thing belongs instead', () => {
    expect(trespassesIn('src/words/a.ts', "import { openStore } from '../store/openStore.ts';")).toEqual([
      {
        file: 'src/words/a.ts',
        why: 'src/words may not know src/store. Words are made from types: work a value out in src/studio and hand it to the sentence.',
      },
    ]);
  });

  it('every room has a file, and no folder has more than 25', () => {
    const files = sourceFiles('src', 'commands', 'tests').map((file) => file.slice(0, file.lastIndexOf('/')));
    const empty = rooms.filter(({ room }) => !/\.[jt]s$/.test(room) && !files.includes(room));
    const crowded = [...new Set(files)].filter((folder) => files.filter((one) => one === folder).length > 25);
    expect({ empty, crowded }).toEqual({ empty: [], crowded: [] });
  });
});
