import { parseArgs } from 'node:util';
import { openApp } from './app.ts';
import { exitCodeOf } from './exitCodeOf.ts';
import { systemClock } from '../clock.ts';
import { logbookOf, readConfig } from './config.ts';
import { connectPlatforms } from './connectPlatforms.ts';
import { harmlessStray } from '../discord/connection/strays.ts';
import { openLog } from './openLog.ts';
import { openReminders } from './openReminders.ts';
import { demoFile, openDemo } from './openDemo.ts';
import { mainWords } from '../words/platform/mainWords.ts';

/** Settles when the program is stopped, or when no part of it can run. */
const untilEnded = () => {
  let fail: (why: unknown) => void = () => undefined;
  const ended = new Promise<number>((resolve, reject) => {
    for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve(0));
    fail = reject;
  });
  // It may reject before anything awaits it.
  ended.catch(() => undefined);
  return { ended, fail };
};

const code = await exitCodeOf(mainWords.usage, async () => {
  const flag = { type: 'boolean', default: false } as const;
  const { values } = parseArgs({ options: { lan: flag, 'new-keys': flag } });
  const config = readConfig();
  const { DISCORD_TOKEN, DATABASE_FILE, DATABASE_URL } = config;
  const demo = [DISCORD_TOKEN, DATABASE_FILE, DATABASE_URL].every((setting) => setting === undefined);
  const { every, calm: log } = openLog(config.LOG_LEVEL);
  // An error in one part must not end the others.
  process.on('unhandledRejection', (err) => {
    const known = harmlessStray(err);
    if (known === undefined) log.error({ err }, mainWords.stray);
    else log.warn({}, known);
  });
  const { ended, fail } = untilEnded();
  const app = await (demo ? openDemo : openApp)({
    file: demo ? demoFile : logbookOf(config),
    clock: systemClock,
    onBug: (err, id, path) => every.error({ err, id, path }, 'bug'),
  });
  const stops: (() => Promise<void>)[] = [() => app.store.close()];
  try {
    const platforms = await connectPlatforms(app, {
      config,
      demo,
      lan: values.lan,
      newKeys: values['new-keys'],
      log,
      tell: (text) => console.log(text),
      fail,
    });
    stops.unshift(platforms.stop);
    if (config.REMINDERS === 'on') {
      const reminders = await openReminders(app, platforms.voices, log);
      stops.unshift(reminders.stop);
    }
    return await ended;
  } finally {
    for (const stop of stops) await stop();
  }
});
// A pending connection attempt would keep the process alive.
process.exit(code);
