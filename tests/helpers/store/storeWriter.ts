// A process that owns a store: `storeWriter FILE log` logs as fast as it can and prints each key and entry once it
// is acknowledged; `storeWriter FILE hold` only holds the file; both until they are ended. `storeWriter FILE once`
// logs one entry and ends; `storeWriter FILE try` does the same, and never as the superuser, who may write anywhere.
import { writeSync } from 'node:fs';
import Sqlite from 'better-sqlite3';
import { systemClock } from '../../../src/clock.ts';
import { streamNo } from '../../../src/studio/ids.ts';
import { openStore } from '../../../src/store/openStore.ts';
import { StoreProblem } from '../../../src/store/engine/storeProblem.ts';
import { gullGrey, loggedAt, water } from './storeEvents.ts';

const [file = '', mode = ''] = process.argv.slice(2);
const say = (line: string) => writeSync(1, `${line}\n`);

/** Drops root's rights after all code is loaded, because `nobody` may not read the files of the driver. */
const giveRootUp = () => {
  new Sqlite(':memory:').close();
  if (process.getuid?.() !== 0) return;
  process.setgid?.(65_534);
  process.setuid?.(65_534);
};

const write = async () => {
  const store = await openStore(file, { clock: systemClock });
  say('open');
  if (mode === 'hold') {
    setInterval(() => undefined, 60_000);
    return;
  }
  const studio = await store.people.studioOf('terminal', 'here', 'Wrackline Clay Co-op');
  const member = await store.people.memberOf(studio, 'terminal', 'me', 'Ana');
  await store.books.writeOnce(studio, 'open', async (book) => {
    await book.open(gullGrey, loggedAt(member, 0));
    return { keep: true, value: 'opened' };
  });
  const logOne = async () => {
    const key = `${process.pid}:${performance.now()}:${Math.random()}`;
    const entry = await store.books.writeOnce(studio, key, async (book) => {
      const logged = await book.log(streamNo(1), water(10), loggedAt(member, 1));
      return { keep: true, value: logged.entry.id };
    });
    say(`${key} ${entry}`);
  };
  const logOn = async (): Promise<never> => {
    for (;;) await logOne();
  };
  if (mode === 'log') await Promise.all(Array.from({ length: 16 }, logOn));
  await logOne();
  await store.close();
};

try {
  if (mode === 'try') giveRootUp();
  await write();
} catch (error) {
  if (!(error instanceof StoreProblem)) throw error;
  say(`problem ${error.kind}`);
  process.exitCode = 1;
}
