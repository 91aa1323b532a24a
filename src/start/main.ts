import '../needsNode.js';
import { parseArgs } from 'node:util';
import { pino } from 'pino';
import { openApp, type App } from './app.ts';
import { chosenStudio } from './chosenStudio.ts';
import { exitCodeOf, UsageProblem } from './exitCodeOf.ts';
import { systemClock } from '../clock.ts';
import type { Voice } from '../contract/contract.ts';
import { readConfig, type Config } from './config.ts';
import { openReminders } from './openReminders.ts';
import { demoFile, openDemo } from './openDemo.ts';
import type { StudioId } from '../studio/ids.ts';
import { mainWords } from '../words/platform/mainWords.ts';

/** Settles when somebody stops the program, or a platform is lost for good; what it settles to is the exit code. */
const untilEnded = () => {
  let end: (code: number) => void = () => undefined;
  const ended = new Promise<number>((resolve) => (end = resolve));
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => end(0));
  return { ended, end };
};

/** Whose room it is: the one that was named, or the only one. Beside Discord a server's studio comes first, so there may be none yet. */
const roomStudio = async (
  app: App,
  { ROOM, ROOM_STUDIO, DISCORD_TOKEN }: Config,
): Promise<StudioId | undefined> => {
  if (ROOM === 'off') return undefined;
  if (ROOM_STUDIO !== undefined || DISCORD_TOKEN === undefined) return chosenStudio(app, ROOM_STUDIO);
  const [only, ...others] = await app.store.people.studios();
  return others.length === 0 ? only?.id : undefined;
};

process.exitCode = await exitCodeOf(mainWords.usage, async () => {
  const flag = { type: 'boolean', default: false } as const;
  const { values } = parseArgs({ options: { lan: flag, 'new-keys': flag } });
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
  const voices: Voice[] = [];
  try {
    const studio = await roomStudio(app, config);
    const room =
      studio &&
      (await (
        await import('./connectRoom.ts')
      ).connectRoom(app, config, {
        studio,
        open: demo,
        lan: values.lan,
        newKeys: values['new-keys'],
        log,
        tell: (text) => console.log(text),
      }));
    if (room) {
      stops.unshift(room.stop);
      voices.push(room.voice);
    }
    if (config.DISCORD_TOKEN !== undefined) {
      const { connectDiscord } = await import('./connectDiscord.ts');
      const { stop, voice } = await connectDiscord(
        room ? { ...app, desk: room.overheard(app.desk) } : app,
        {
          token: config.DISCORD_TOKEN,
          ...(config.DISCORD_GUILD !== undefined && { devGuild: config.DISCORD_GUILD }),
          ...(config.DISCORD_API !== undefined && { api: config.DISCORD_API }),
        },
        {
          log,
          draw: async (chart) => (await import('../chart/chartPng.ts')).chartPng(chart),
          fatal: (why) => {
            log.fatal(why);
            end(4);
          },
        },
      );
      stops.unshift(stop);
      // On a phone before it is looked for in the room.
      voices.unshift(voice);
      log.info(mainWords.connected);
    } else if (!room) throw new UsageProblem(mainWords.nothingOn);
    const reminders = await openReminders(app, voices, log);
    stops.unshift(reminders.stop);
    return await ended;
  } finally {
    for (const stop of stops) await stop();
  }
});
