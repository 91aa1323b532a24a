import { parseArgs } from 'node:util';
import { definedOnly } from '../definedOnly.ts';
import { openApp } from './app.ts';
import { exitCodeOf } from './exitCodeOf.ts';
import { logbookOf, readConfig } from './config.ts';
import { connectPlatforms } from './connectPlatforms.ts';
import { harmlessStray } from '../discord/connection/strays.ts';
import { logForgotten } from './logForgotten.ts';
import { openLog } from './openLog.ts';
import { countingLog } from '../monitor/countParts.ts';
import { startCounts } from '../monitor/counts.ts';
import { openMonitor } from './openMonitor.ts';
import { stopAll, type Stop } from './stopAll.ts';
import { openReminders } from './openReminders.ts';
import { demoFile, openDemo } from './openDemo.ts';
import { warmUp } from './warmUp.ts';
import { learnAtNight, refoldAtLeisure } from './whileRunning.ts';
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
  const counts = startCounts();
  const logs = openLog(config.LOG_LEVEL);
  const [every, log] = [countingLog(logs.every, counts), countingLog(logs.calm, counts)];
  // An error in one part must not end the others.
  process.on('unhandledRejection', (err) => {
    const known = harmlessStray(err);
    if (known === undefined) log.error({ err }, mainWords.stray);
    else log.warn({}, known);
  });
  const { ended, fail } = untilEnded();
  const app = await (demo ? openDemo : openApp)({
    file: demo ? demoFile : logbookOf(config),
    counts,
    onBug: (err, id, path) => every.error({ err, id, path }, 'bug'),
  });
  logForgotten(app.store, every);
  const stops: Stop[] = [{ stop: () => app.store.close(), within: 1_000 }];
  try {
    const platforms = await connectPlatforms(app, {
      config,
      demo,
      lan: values.lan,
      newKeys: values['new-keys'],
      log,
      refused: (status) => counts.refused.add({ status: String(status) }),
      tell: (text) => console.log(text),
      fail,
    });
    stops.unshift({ stop: platforms.stop, within: 3_000 });
    const reminders =
      config.REMINDERS === 'on'
        ? await openReminders(app, platforms.voices, log, (outcome) => counts.reminders.add({ outcome }))
        : undefined;
    // One that is being sent to a platform that hangs is sent again at the next start.
    if (reminders) stops.unshift({ stop: reminders.stop, within: 500 });
    const monitor = openMonitor({ app, platforms, counts, ...definedOnly({ reminders }) }, config, {
      demo,
      log,
    });
    if (monitor) stops.push({ stop: monitor.stop, within: 250 });
    stops.unshift({ stop: refoldAtLeisure(app.store, log), within: 100 });
    stops.unshift({ stop: learnAtNight(app.store, { clock: app.clock, log }), within: 500 });
    const warm = () => void warmUp(app, log);
    // Whoever waited for the start comes first.
    setTimeout(warm, 10_000).unref();
    return await ended;
  } finally {
    await stopAll(stops, log);
  }
});
// A pending connection attempt would keep the process alive.
process.exit(code);
