import { describe, expect, it } from 'vitest';
import { speak } from '../../../src/desk/speak.ts';
import { bucketCautions } from '../../../src/studio/settings/bucketSettings.ts';
import { instant } from '../../../src/studio/ids.ts';
import { replyJson } from '../../../src/terminal/plainReply.ts';
import { answerSchema } from '../../helpers/discord/answerSchemas.ts';
import { demoStudio } from '../../helpers/demoStudio.ts';
import { openGlazeRoom, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

const wordsOf = (text: string) =>
  new Set((text.toLowerCase().match(/[a-z-]{4,}/g) ?? []).filter((word) => !common.has(word)));
const common = new Set(['with', 'this', 'that', 'them', 'your', 'never', 'wear', 'before', 'keeper']);

/** Two warnings of one metal or material are one; those of two are two, however alike they are put. */
const subject = (text: string) =>
  /^(?:Holds (?:soluble )?|May hold )(\w+)/.exec(text)?.[1] ??
  /^\w+ (?:oxide|dioxide|carbonate): (\w+)/.exec(text)?.[1];

const isNear = (one: string, other: string): boolean => {
  const [a, b] = [subject(one), subject(other)];
  if (a !== undefined && b !== undefined) return a === b;
  const [fewer, more] = [wordsOf(one), wordsOf(other)].sort((x, y) => x.size - y.size);
  if (!fewer || !more || fewer.size === 0) return one === other;
  return [...fewer].filter((word) => more.has(word)).length / fewer.size > 0.7;
};

const twice = (cautions: readonly string[]): [string, string][] =>
  cautions.flatMap((one, i) =>
    cautions.slice(i + 1).flatMap((other): [string, string][] => (isNear(one, other) ? [[one, other]] : [])),
  );

const questions = [
  'water or stir?',
  'how much water does Gull Grey need?',
  'do I need gloves for Gull Grey?',
  'is Gull Grey toxic?',
  'how do I dry sieve dust?',
  'how do I add dry batch to Gull Grey?',
  'can I draw off water from Gull Grey?',
  'where does drawn-off water go?',
  'how do I use the power mixer on Gull Grey?',
  'how heavy is a full pail?',
  'when do I add deflocculant to Gull Grey?',
  'Gull Grey is too thin',
  'Gull Grey is too thick',
  'how do I use latex?',
  'hot wax',
  'does Gull Grey smell bad, can I bleach it?',
  'is this glaze food safe?',
  'how do I clean up dust?',
  'sieve Gull Grey?',
];

const lines = [
  '/bucket show bucket:gg',
  '/water-or-stir bucket:gg',
  '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes',
  '/reading bucket:gg gravity:1.36 seconds:9 stirred:yes',
  '/reading bucket:gg gravity:1.52 seconds:22 stirred:yes',
  '/reading bucket:gg gravity:1.44 seconds:30 stirred:yes',
  '/prep piece:jug bucket:gg resist:latex',
  '/prep piece:bowl bucket:gg resist:hot-wax second:other',
  '/prep piece:mug bucket:gg resist:wax',
  '/added bucket:gg what:water amount:100ml',
  '/added bucket:gg what:dry amount:100g',
  '/added bucket:gg what:deflocculant amount:1ml',
  '/added bucket:gg what:draw-off amount:100ml',
  '/added bucket:gg what:glaze amount:1l from:other',
  '/added bucket:other what:glaze amount:1l from:gg',
  '/added bucket:gg what:other amount:10ml note:"bleach, then vinegar, lead and barium"',
  '/stirred bucket:gg with:mixer',
  '/batch blend first:gg second:other',
  '/batch blend first:other second:gg',
  '/batch correct bucket:gg by:dry',
  '/batch correct bucket:gg by:draw-off',
  '/dip time bucket:gg thickness:1mm',
  ...questions.map((one) => `/ask question:"${one}" bucket:gg`),
];

const add = (room: GlazeRoom, name: string, nick: string, cautions: string) =>
  room.keeper(
    0,
    `/bucket add name:"${name}" nick:${nick} pail:19l volume:15l gravity:1.42-1.46 seconds:12-16 cup:ford4 cautions:"${cautions}"`,
  );

describe('no reply says a caution twice, in one wording or two nearly alike', () => {
  const all = bucketCautions.filter((one) => one !== 'children').join(', ');
  it.each(['none', 'children', 'gloves', all])('of a bucket marked %s', async (cautions) => {
    const found: unknown[] = [];
    for (const as of ['keeper', 'say'] as const) {
      const room = await openGlazeRoom();
      expect((await add(room, 'Gull Grey', 'gg', cautions)).ok).toBe(true);
      expect((await add(room, 'Other', 'other', 'none')).ok).toBe(true);
      await room.keeper(1, '/bucket release bucket:gg');
      await room.keeper(1, '/reading bucket:other gravity:1.44 seconds:14 stirred:yes');
      let minutes = 1;
      for (const line of lines) {
        const reply = await room[as]((minutes += 1), line);
        found.push(...twice(reply.cautions).map((pair) => [line, ...pair]));
        await room.keeper(minutes, '/bucket release bucket:gg');
      }
      expect(room.bugs).toEqual([]);
    }
    expect(found).toEqual([]);
  });

  it.each([
    'barium carbonate 10, silica 90',
    'manganese dioxide 5, copper carbonate 5, silica 90',
    'lithium carbonate 5, borax 20, silica 75',
    'soda ash 20, silica 60, nickel oxide 2, cobalt oxide 2, chrome oxide 2',
    'red lead 50, silica 50',
    'potassium bichromate 5, silica 95',
    'wood ash 50, feldspar 50',
  ])('of a batch of %s', async (recipe) => {
    const room = await openGlazeRoom();
    const reply = await room.keeper(1, `/batch plan recipe:"${recipe}" volume:16l gravity:1.45`);
    expect(twice(reply.cautions)).toEqual([]);
    const kept = await room.keeper(2, `/batch recipe name:tried recipe:"${recipe}"`);
    expect(twice(kept.cautions)).toEqual([]);
  });

  it('of a bucket of the demo', async () => {
    const { app, studio, now, as, close } = await demoStudio('2026-05-20T21:00:00Z');
    const keeper = await as('Mara', 'keeper');
    const buckets = await app.store.books.read(studio, (book) => book.buckets());
    const found: unknown[] = [];
    let lines = 0;
    for (const { no, settings } of buckets)
      for (const line of [
        `/bucket show bucket:${no}`,
        `/water-or-stir bucket:${no}`,
        `/dose bucket:${no} `,
        `/prep piece:"jug ${no}" bucket:${no} resist:latex`,
        ...questions
          .slice(0, 8)
          .map((one) => `/ask question:"${one.replace('Gull Grey', settings.name)}" bucket:${no}`),
      ]) {
        const reply = await speak(line.trim(), `once:${(lines += 1)}`, { ...keeper, now: instant(now) }, app);
        const { cautions } = answerSchema.parse(
          JSON.parse(JSON.stringify(replyJson(reply, { now, zone: 'UTC' }))),
        );
        found.push(...twice(cautions).map((pair) => [line, ...pair]));
      }
    await close();
    expect(found).toEqual([]);
  });
});
