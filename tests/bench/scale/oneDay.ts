import { systemClock } from '../../../src/clock.ts';
import { speak } from '../../../src/desk/speak.ts';
import type { App } from '../../../src/start/app.ts';
import { percentile } from '../load.ts';
import { skewed } from './skewed.ts';
import { buckets } from './templateStudio.ts';

/** Milliseconds: how long it took, and of that the processor’s. On a machine that others use, the second tells more. */
interface Took {
  took: number;
  busy: number;
}

export interface Visit extends Took {
  asks: boolean;
  /** Whether the studio is among the last that were visited, so that the program remembers it. */
  known: boolean;
}

/** A member of a studio asks, and every fourth logs what was read. */
export const visitOne = async (app: App, studioNo: number, n: number): Promise<Took> => {
  const external = String(studioNo);
  const asks = n % 4 !== 3;
  const bucket = 1 + ((n * 3) % buckets);
  const line = asks
    ? `/water-or-stir bucket:${bucket}`
    : `/reading bucket:${bucket} gravity:1.44 seconds:14 stirred:yes`;
  const [began, busy] = [performance.now(), process.cpuUsage()];
  const studio = await app.store.people.studioOf('bench', external, '');
  const member = await app.store.people.memberOf(studio, 'bench', 'wren', 'Wren');
  const key = `bench:${process.pid}:${n}:${external}:${began}`;
  const reply = await speak(line, key, { studio, member, role: 'member', now: systemClock.now() }, app);
  if (reply.kind !== 'answer') throw new Error(JSON.stringify(reply));
  const { user, system } = process.cpuUsage(busy);
  return { took: performance.now() - began, busy: (user + system) / 1_000 };
};

/** As many as a store remembers: of any other studio, the first visit reads it from the disk. */
const mostRemembered = 200;

/** So many visits, `together` at a time. Few studios have many of them, so most of the file lies still. */
export const oneDay = async (
  app: App,
  day: string,
  { studios, visits, together }: { studios: number; visits: number; together: number },
): Promise<{ visits: Visit[]; seconds: number; processor: number }> => {
  const draw = skewed(studios, day);
  const latest = new Set<number>();
  const made: Visit[] = [];
  const [began, busy] = [performance.now(), process.cpuUsage()];
  let next = 0;
  const visitor = async () => {
    while (next < visits) {
      const [n, studioNo] = [next, draw()];
      next += 1;
      const known = latest.delete(studioNo);
      latest.add(studioNo);
      for (const oldest of latest) if (latest.size > mostRemembered) latest.delete(oldest);
      made.push({ ...(await visitOne(app, studioNo, n)), asks: n % 4 !== 3, known });
    }
  };
  await Promise.all(Array.from({ length: together }, visitor));
  const { user, system } = process.cpuUsage(busy);
  return {
    visits: made,
    seconds: (performance.now() - began) / 1_000,
    processor: (user + system) / 1_000 / visits,
  };
};

/** One line for each kind: asked or logged, in a studio that the program still remembers or not. */
export const tellTimes = (title: string, visits: readonly Visit[]): void => {
  for (const asks of [true, false])
    for (const known of [false, true]) {
      const some = visits.filter((one) => one.asks === asks && one.known === known);
      if (some.length === 0) continue;
      const at = (of: keyof Took, part: number) =>
        percentile(
          some.map((one) => one[of]),
          part,
        ).toFixed(1);
      const what = `${asks ? '/water-or-stir' : '/reading'}, ${known ? 'remembered' : 'not remembered'}`;
      console.log(
        `  ${title}, ${what}: p50 ${at('took', 0.5)} ms, p99 ${at('took', 0.99)} ms; of the processor ${at('busy', 0.5)} and ${at('busy', 0.99)} ms (${some.length})`,
      );
    }
};
