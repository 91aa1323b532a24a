/** A folder of the program, and what its files may import. */
export interface Room {
  /** A folder, or one file that is a room of its own. Its subfolders are rooms of their own. */
  room: string;
  /** Packages and `node:` modules, by prefix. */
  packages?: readonly string[];
  /** Lower rooms that this room must not import. A name that ends in `/` stands for all folders below it. */
  not?: readonly string[];
  /** Rooms from which it may import types only. */
  types?: readonly string[];
  /** Where the offending code belongs instead. */
  instead: string;
}

const arithmetic = 'Formulas know no studio, no clock and no package: put what needs one into src/studio.';
const model =
  'What the studio knows is free of storage, sentences and platforms: put those into src/store, src/words or a platform.';
const storage = 'The store knows the studio only: sentences belong into src/words, answers into src/replies.';
const sentences = 'Words are made from types: work a value out in src/studio and hand it to the sentence.';
const answering =
  'Answers are built from what the logbook says: reading and writing files belongs into src/store, drawing and sending to a platform.';
const platform =
  'A platform speaks to the desk alone: what two of them share belongs into src/contract, what is stored behind a port.';
const top = 'Only the program’s start puts everything together: move the thing to src/start.';

const everyStore = ['src/store', 'src/store/'];
const everyPlatform = ['src/discord', 'src/discord/', 'src/room', 'src/room/', 'src/terminal'];
const beside = ['src/chart', 'src/labels', 'src/search', 'src/seed', 'src/reminders'];
const others = (own: string) => everyPlatform.filter((room) => room !== own && room !== `${own}/`);

const glaze = (room: string): Room => ({ room: `src/glaze${room}`, instead: arithmetic });
const studio = (room: string, packages: readonly string[] = []): Room => ({
  room: `src/studio/${room}`,
  packages,
  types: ['src/clock.ts'],
  instead: model,
});
const store = (room: string, packages: readonly string[] = []): Room => ({
  room: `src/store${room}`,
  packages: ['kysely', 'better-sqlite3', 'zod', 'uuid', 'node:', ...packages],
  types: ['src/clock.ts'],
  instead: storage,
});
const words = (room: string): Room => ({
  room: `src/words${room}`,
  not: everyStore,
  types: ['src/studio/', 'src/parse', 'src/parse/', 'src/clock.ts'],
  instead: sentences,
});
const answers = (room: string): Room => ({ room, not: [...everyStore, 'src/clock.ts'], instead: answering });
const discord = (room: string): Room => ({
  room: `src/discord${room}`,
  packages: ['discord.js', 'node:'],
  not: [...everyStore, ...beside, ...others('src/discord'), 'commands', 'commands/'],
  types: ['src/studio/', 'src/clock.ts'],
  instead: platform,
});
const localRoom = (room: string): Room => ({
  room: `src/room${room}`,
  packages: ['hono', '@hono/node-server', 'uqr', 'zod', 'node:'],
  not: [...everyStore, ...beside, ...others('src/room'), 'commands', 'commands/'],
  types: ['src/clock.ts'],
  instead: platform,
});

/** What runs in a browser. */
const page = (room: string, instead: string): Room => ({
  room: `src/room/page${room}`,
  not: [
    'src/glaze',
    'src/glaze/',
    'src/studio',
    'src/studio/',
    ...everyStore,
    'src/parse',
    'src/parse/',
    'src/contract',
    'src/contract/',
    'src/replies/',
    'src/desk',
    'commands',
    'commands/',
    ...beside,
    'src/discord',
    'src/discord/',
    'src/room/access',
    'src/room/posts',
    'src/room/server',
  ],
  types: ['src/room', 'src/clock.ts'],
  instead,
});

/** All rooms, lowest first. A file may import from its own room and from lower ones. */
export const rooms: readonly Room[] = [
  {
    room: 'src/text',
    instead: 'Text and digits know nothing of glaze or studio: put what does where it is used.',
  },
  { room: 'src/definedOnly.ts', instead: arithmetic },
  { room: 'src/present.ts', instead: arithmetic },
  {
    room: 'src/windowScale.ts',
    instead:
      'It places a value on a scale, and draws nothing: drawing belongs into src/labels or src/room/page.',
  },
  glaze(''),
  glaze('/statistics'),
  glaze('/water'),
  glaze('/slurry'),
  glaze('/flow'),
  glaze('/air'),
  glaze('/body'),
  glaze('/materials'),
  { room: 'src/studio', instead: model },
  { room: 'src/clock.ts', instead: model },
  studio('time', ['date-fns/', '@date-fns/tz']),
  studio('settings'),
  studio('contents'),
  studio('belief'),
  studio('bucket'),
  studio('bucket/fold'),
  studio('naming'),
  studio('measure'),
  studio('dose'),
  studio('verdict'),
  studio('batch'),
  studio('resist'),
  studio('piece'),
  studio('firing'),
  studio('remind'),
  studio('round'),
  studio('people'),
  studio('logbook'),
  store('/migrations'),
  store('/engine'),
  store('/engine/sqlite'),
  store('/engine/postgres', ['pg']),
  store('/engine/either'),
  store('/entries'),
  store('/states'),
  store('/backup'),
  store('/people'),
  store('/lines'),
  store('/reminders'),
  store('/room'),
  store('/logbook'),
  store('/imports'),
  store('/move'),
  store(''),
  {
    room: 'src/parse',
    packages: ['chrono-node/en', 'numeric-quantity'],
    not: [...everyStore, 'src/clock.ts'],
    instead: 'Reading what was typed needs the studio alone: a sentence about it belongs into src/words.',
  },
  {
    room: 'src/parse/plain',
    not: [...everyStore, 'src/clock.ts'],
    instead: 'Reading what was said in plain words needs the studio alone.',
  },
  words('/text'),
  words('/resist'),
  words('/verdict'),
  words('/batch'),
  words('/piece'),
  words('/firing'),
  words('/studio'),
  words('/bucket'),
  words('/ask'),
  words('/remind'),
  words('/desk'),
  words('/platform'),
  words(''),
  { ...answers('src/contract'), packages: ['node:net'] },
  answers('src/contract/kinds'),
  answers('src/replies/verdict'),
  answers('src/replies/bucket'),
  answers('src/replies/batch'),
  answers('src/replies/resist'),
  answers('src/replies/piece'),
  answers('src/replies/firing'),
  answers('src/replies/ask'),
  answers('src/replies/ask/sums'),
  answers('src/replies/studio'),
  answers('src/replies/round'),
  answers('src/replies/export'),
  answers('src/desk'),
  {
    room: 'src/notebook',
    packages: ['papaparse'],
    not: [...everyStore, 'src/clock.ts'],
    instead:
      'A notebook becomes what members would have typed: what that means belongs into commands, reading the file into src/start.',
  },
  answers('commands/batch'),
  answers('commands/bucket'),
  answers('commands/coat'),
  answers('commands/dip'),
  answers('commands/note'),
  answers('commands/remind'),
  answers('commands/studio'),
  answers('commands'),
  {
    room: 'src/chart',
    packages: ['@observablehq/plot', '@resvg/resvg-js', 'linkedom', 'node:'],
    not: [...everyStore, 'commands', 'commands/', 'src/clock.ts'],
    instead: 'A chart is drawn from a reply: what it shows belongs into src/replies.',
  },
  {
    room: 'src/labels',
    packages: ['uqr', 'node:'],
    not: [...everyStore, 'commands', 'commands/', 'src/chart', 'src/clock.ts'],
    instead: 'Labels are drawn from a sheet: what stands on them belongs into src/replies.',
  },
  {
    room: 'src/search',
    packages: ['minisearch', 'node:'],
    not: [...everyStore, 'commands', 'commands/', 'src/chart'],
    types: ['src/clock.ts'],
    instead: 'Search finds notes that it is handed: reading them belongs into src/seed or src/store.',
  },
  {
    room: 'src/seed',
    packages: ['zod', 'node:'],
    not: [...everyStore, 'commands', 'commands/', 'src/chart', 'src/search', 'src/clock.ts'],
    instead: 'Seeds are plain data, checked as they are read: playing them belongs into src/start.',
  },
  {
    room: 'src/reminders',
    packages: ['node:'],
    not: [...everyStore, 'commands', 'commands/', 'src/chart', 'src/search', 'src/seed'],
    types: ['src/clock.ts'],
    instead: 'Reminders speak through the voices that they are handed: storing them belongs into src/store.',
  },
  discord(''),
  discord('/render'),
  discord('/message'),
  discord('/answer'),
  discord('/connection'),
  localRoom(''),
  localRoom('/access'),
  localRoom('/posts'),
  localRoom('/server'),
  {
    room: 'src/monitor',
    packages: ['node:'],
    not: [...everyStore, ...everyPlatform, ...beside, 'commands', 'commands/'],
    types: ['src/clock.ts'],
    instead:
      'This counts, and says how the parts are: what it needs from one of them is handed to it by src/start.',
  },
  page('/browser', 'This is what a browser brings: what is shown and said belongs into src/room/page.'),
  page('', 'The page runs in a browser: it knows words and the shapes that come over the wire.'),
  {
    room: 'src/terminal',
    packages: ['date-fns/', 'node:'],
    not: [
      ...everyStore,
      ...beside.filter((room) => room !== 'src/chart'),
      ...others('src/terminal'),
      'commands',
      'commands/',
    ],
    types: ['src/clock.ts'],
    instead: platform,
  },
  { room: 'src/needsNode.js', instead: top },
  { room: 'src/start/imports', packages: [''], instead: top },
  { room: 'src/start', packages: [''], instead: top },
  { room: 'src/generated', packages: [''], instead: top },
  { room: 'src/bin', packages: [''], instead: top },
  {
    room: 'tests/bench/pots/physics',
    not: ['src/', 'commands', 'commands/'],
    instead: 'What a simulated pail does must not be reckoned by what it is there to judge.',
  },
];
