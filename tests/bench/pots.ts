import { parseArgs } from 'node:util';
import { deciders } from './pots/deciders/deciders.ts';
import { liveThrough } from './pots/people/liveThrough.ts';
import type { Score } from './pots/people/score.ts';
import { benchRooms } from './pots/physics/settings.ts';
import { wildRoom } from './pots/physics/wildRoom.ts';
import { drawFrontier } from './pots/report/frontier.ts';
import { summary, type Summary } from './pots/report/summary.ts';
import { calibrationTable, minutesTable, roomTable } from './pots/report/tables.ts';

/**
 * How good the pails are that pots are dipped into: simulated people, who make ordinary mistakes, do as the bot says, or as
 * others would, at pails whose truth is known. A pail is right at a dip when its gravity lies in its window (± 0.005), its
 * seconds in theirs (± 7 %), and it was stirred within 45 minutes. Water or powder does harm when gravity was inside its
 * window or is led further out; so does a dose, by the seconds. A visit is sent away when it ends with
 * neither a dip nor a step that a member or a keeper could do now.
 */
const { values } = parseArgs({
  args: process.argv.slice(2),
  allowPositionals: true,
  options: {
    /** The first seed; what was tuned on some is judged on others. */
    seed: { type: 'string', default: '1' },
    seeds: { type: 'string', default: '10' },
    days: { type: 'string', default: '60' },
    room: { type: 'string', multiple: true },
    /** Rooms drawn by chance around the busy one, by their numbers. */
    wild: { type: 'string', multiple: true },
    decider: { type: 'string', multiple: true },
    picture: { type: 'string' },
  },
});

const counted = (what: string, typed: string): number => {
  const value = Number(typed);
  if (!Number.isInteger(value) || value < 1)
    throw new Error(`--${what} is a whole number from 1 up: ${typed}`);
  return value;
};

/** Those named, or all of them. */
const chosen = <T extends { name: string }>(
  what: string,
  all: readonly T[],
  names?: string[],
): readonly T[] =>
  names === undefined
    ? all
    : names.map((name) => {
        const found = all.find((one) => one.name === name);
        if (!found)
          throw new Error(`there is no ${what} "${name}": ${all.map((one) => one.name).join(', ')}`);
        return found;
      });

const [seeds, days] = [counted('seeds', values.seeds), counted('days', values.days)];
const firstSeed = counted('seed', values.seed);
const wild = (values.wild ?? []).map((no) => wildRoom(counted('wild', no)));
const rooms = [...(values.room || wild.length === 0 ? chosen('room', benchRooms, values.room) : []), ...wild];
const asked = chosen('decider', deciders, values.decider);

const all: Summary[] = [];
for (const room of rooms) {
  const here: Summary[] = [];
  for (const decider of asked) {
    const scores: Score[] = [];
    for (let seed = firstSeed; seed < firstSeed + seeds; seed += 1)
      scores.push(await liveThrough(room, decider, { seed, days }));
    here.push(summary(room.name, decider.name, scores));
  }
  console.log(`\n${roomTable(room.name, here)}\n\n${minutesTable(room.name, here)}`);
  for (const calibration of here.map(calibrationTable))
    if (calibration !== undefined) console.log(`\n${calibration}`);
  all.push(...here);
}
console.log(
  `\nright, gravity, flow, stirred, minutes, presses, characters, changes: of or for a dip; harm: of 100 changes; sent away: of visits.`,
);
console.log(
  `Seeds ${firstSeed} to ${firstSeed + seeds - 1}, of ${days} days; ± is two standard errors of the mean over seeds.`,
);
if (values.picture !== undefined) drawFrontier(all, values.picture);
