import { addHours } from 'date-fns';
import type { Clock } from '../../../src/clock.ts';
import { speak } from '../../../src/desk/speak.ts';
import { instant, type StudioId } from '../../../src/studio/ids.ts';
import { openApp } from '../../../src/start/app.ts';

export const buckets = 20;
export const entriesEach = 200;

/** What is said at a bucket on a visit: stirred and read, sometimes corrected. Invented; only the amount of it counts. */
const visit = (bucket: number, n: number): string[] => {
  const gravity = (1.42 + ((bucket * 7 + n * 5) % 9) / 200).toFixed(3);
  const seconds = 12 + ((bucket + n * 3) % 9) / 2;
  const read = `/reading bucket:${bucket} gravity:${gravity} seconds:${seconds} stirred:yes`;
  return n % 4 === 3
    ? [read, `/added bucket:${bucket} what:water amount:${200 + ((n * 37) % 300)}ml`]
    : [read, `/stirred bucket:${bucket} minutes:3`];
};

/** Makes a studio of twenty buckets with two hundred entries each, through the desk, as its members would. */
export const makeTemplate = async (file: string, clock: Clock): Promise<StudioId> => {
  const app = await openApp({ file, clock, onBug: console.error });
  try {
    const studio = await app.store.people.studioOf('bench', 'template', 'Template');
    const members = await Promise.all(
      ['Wren', 'Tern', 'Plover'].map((name) =>
        app.store.people.memberOf(studio, 'bench', name.toLowerCase(), name),
      ),
    );
    let [said, at] = [0, addHours(clock.now(), -2 * buckets * entriesEach).getTime()];
    const say = async (line: string) => {
      const member = members[said % members.length] ?? members[0];
      if (member === undefined) throw new Error('a studio without members');
      said += 1;
      at = addHours(at, 1).getTime();
      const reply = await speak(
        line,
        `bench:${said}`,
        { studio, member, role: 'keeper', now: instant(at) },
        app,
      );
      if (reply.kind !== 'answer') throw new Error(`${line}: ${JSON.stringify(reply.title)}`);
    };
    for (let bucket = 1; bucket <= buckets; bucket += 1)
      await say(
        `/bucket add name:"Bench Glaze ${bucket}" pail:19l volume:15l gravity:1.42-1.46 seconds:12-16 cup:ford4`,
      );
    for (let n = 0; 2 * n + 1 < entriesEach; n += 1)
      for (let bucket = 1; bucket <= buckets; bucket += 1)
        for (const line of visit(bucket, n).slice(0, entriesEach - 1 - 2 * n)) await say(line);
    return studio;
  } finally {
    await app.store.close();
  }
};
