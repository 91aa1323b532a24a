import type { App } from './app.ts';
import { speak } from '../desk/speak.ts';
import { addDays } from '../studio/time/civilDay.ts';
import { instant, minutes, type Instant, type StudioId } from '../studio/ids.ts';
import { instantOnDay, wallOf } from '../studio/time/wallTime.ts';
import type { Seed, SeedLine } from '../seed/loadSeed.ts';

const instantOfLine = (line: SeedLine, start: Instant, zone: string): Instant => {
  if ('minutesAgo' in line) return instant(start - minutes(line.minutesAgo));
  const [hour = 0, minute = 0] = line.clock.split(':').map(Number);
  return instantOnDay(addDays(wallOf(start, zone), -line.daysAgo), 60 * hour + minute, zone);
};

const inOrder = (seed: Seed, start: Instant) =>
  [seed, ...seed.buckets, seed.results]
    .flatMap(({ log }) => log)
    .map((line) => ({ ...line, at: instantOfLine(line, start, seed.zone) }))
    .sort((a, b) => a.at - b.at);

/** Says every line of the invented studio at the desk, as its members would have, the last just before `start`. */
export const playSeed = async (seed: Seed, app: App, start: Instant): Promise<StudioId> => {
  const { people } = app.store;
  const studio = await people.studioOf('terminal', 'here', seed.name);
  const memberOf = (name: string) => people.memberOf(studio, 'terminal', name, name);
  for (const name of [...seed.keepers, ...seed.members]) await memberOf(name);
  for (const [i, { at, by, line }] of inOrder(seed, start).entries()) {
    const role = seed.keepers.includes(by) ? 'keeper' : 'member';
    const reply = await speak(line, `seed:${i}`, { studio, member: await memberOf(by), role, now: at }, app);
    if (reply.kind !== 'answer') throw new Error(`${by}: ${line}: ${JSON.stringify(reply)}`);
  }
  return studio;
};
