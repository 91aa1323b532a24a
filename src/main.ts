import { pino } from 'pino';
import { openApp } from './app.ts';
import { chosenStudio } from './bin/chosenStudio.ts';
import { exitCodeOf } from './bin/exitCodeOf.ts';
import { systemClock } from './clock.ts';
import { readConfig } from './config.ts';
import { demoFile, demoKeeper, openDemo } from './seed/openDemo.ts';
import { chatWords } from './words/chatWords.ts';
import { mainWords } from './words/mainWords.ts';

/** Settles when somebody stops the program, or a platform is lost for good; what it settles to is the exit code. */
const untilEnded = () => {
  let end: (code: number) => void = () => undefined;
  const ended = new Promise<number>((resolve) => (end = resolve));
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => end(0));
  return { ended, end };
};

process.exitCode = await exitCodeOf(mainWords.usage, async () => {
  const config = readConfig();
  const demo = config.DISCORD_TOKEN === undefined && config.DATABASE_FILE === undefined;
  const log = pino({ level: config.LOG_LEVEL }, pino.destination({ dest: 2, sync: true }));
  const { ended, end } = untilEnded();
  const app = await (demo ? openDemo : openApp)({
    file: config.DATABASE_FILE ?? (demo ? demoFile : 'data/studio.db'),
    clock: systemClock,
    onBug: (err, id, path) => log.error({ err, id, path }, 'bug'),
  });
  const stops: (() => Promise<void>)[] = [() => app.store.close()];
  try {
    if (config.DISCORD_TOKEN !== undefined) {
      const { connectDiscord } = await import('./connectDiscord.ts');
      const { stop } = await connectDiscord(
        app,
        {
          token: config.DISCORD_TOKEN,
          ...(config.DISCORD_GUILD !== undefined && { devGuild: config.DISCORD_GUILD }),
          ...(config.DISCORD_API !== undefined && { api: config.DISCORD_API }),
        },
        {
          log,
          draw: async (chart) => (await import('./chart/chartPng.ts')).chartPng(chart),
          fatal: (why) => {
            log.fatal(why);
            end(4);
          },
        },
      );
      stops.unshift(stop);
      log.info(mainWords.connected);
    } else {
      if (demo) console.log(chatWords.demo(demoFile));
      const { openChat } = await import('./openChat.ts');
      const as = demo ? demoKeeper : 'me';
      await openChat(app, await chosenStudio(app, undefined), { as, keeper: false });
      return 0;
    }
    return await ended;
  } finally {
    for (const stop of stops) await stop();
  }
});
