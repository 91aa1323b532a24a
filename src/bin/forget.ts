import { randomUUID } from 'node:crypto';
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';
import { z } from 'zod';
import { systemClock } from '../clock.ts';
import { speak } from '../desk/speak.ts';
import { openApp, type App } from '../start/app.ts';
import { logbookOf, readConfig } from '../start/config.ts';
import { exitCodeOf } from '../start/exitCodeOf.ts';
import { memberId, studioId } from '../studio/ids.ts';
import { forgetWords } from '../words/platform/forgetWords.ts';

const forgotten = z.object({
  msg: z.literal(forgetWords.logged),
  studio: z.string().transform(studioId),
  members: z.array(z.string().transform(memberId)),
});
type Forgotten = z.infer<typeof forgotten>;

/** A line of the log, also when the system’s journal has put something before it. */
const readLine = (line: string): Forgotten | undefined => {
  try {
    return forgotten.safeParse(JSON.parse(line.slice(line.indexOf('{')))).data;
  } catch {
    return undefined;
  }
};

type Outcome = 'again' | 'already' | 'only-keeper' | 'broken';

const forget = async (
  app: App,
  studio: Forgotten['studio'],
  member: Forgotten['members'][number],
): Promise<Outcome> => {
  const known = await app.store.books.read(studio, (book) => book.member(member));
  if (!known) return 'already';
  const who = { studio, member, role: 'member', now: systemClock.now() } as const;
  const { kind } = await speak('/forget-me sure:yes', `forget:${randomUUID()}`, who, app);
  if (kind === 'answer') return 'again';
  return kind === 'refusal' ? 'only-keeper' : 'broken';
};

process.exitCode = await exitCodeOf(forgetWords.usage, async () => {
  parseArgs({ options: {} });
  const found: Forgotten[] = [];
  for await (const line of createInterface({ input: process.stdin, crlfDelay: Infinity })) {
    const read = readLine(line);
    if (read) found.push(read);
  }
  if (found.length === 0) {
    console.log(forgetWords.noLines);
    return 0;
  }
  const app = await openApp({ file: logbookOf(readConfig()) });
  const counts: Record<Outcome, number> = { again: 0, already: 0, 'only-keeper': 0, broken: 0 };
  try {
    for (const { studio, members } of found)
      for (const member of members) {
        const outcome = await forget(app, studio, member);
        counts[outcome] += 1;
        if (outcome === 'only-keeper') console.error(forgetWords.onlyKeeper(member, studio));
        if (outcome === 'broken') console.error(forgetWords.broken(member, studio));
      }
    await app.store.erased();
  } finally {
    await app.store.close();
  }
  console.log(forgetWords.done(counts.again, counts.already));
  return counts['only-keeper'] + counts.broken > 0 ? 1 : 0;
});
