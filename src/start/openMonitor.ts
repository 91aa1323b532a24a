import { definedOnly } from '../definedOnly.ts';
import type { App } from './app.ts';
import type { Config } from './config.ts';
import type { Platforms } from './connectPlatforms.ts';
import type { Log } from '../contract/log.ts';
import type { Counts } from '../monitor/counts.ts';
import { lookAfter } from '../monitor/health.ts';
import { keepConnected, type KeptConnected } from './keepConnected.ts';
import type { Reminders } from '../reminders/startReminders.ts';
import type { RunningMonitor } from '../monitor/startMonitor.ts';
import { monitorWords } from '../words/platform/monitorWords.ts';

const usualPort = 8_018;

interface Watched {
  app: App;
  platforms: Platforms;
  /** Left out when another process tells them. */
  reminders?: Reminders;
  counts: Counts;
}

/** Offers health and metrics, unless they are switched off. */
export const openMonitor = (
  { app, platforms, reminders, counts }: Watched,
  { MONITOR_PORT, MONITOR_BIND, MONITOR_TOKEN }: Config,
  { demo, log }: { demo: boolean; log: Log },
): KeptConnected<RunningMonitor> | undefined => {
  const port = MONITOR_PORT ?? (demo ? 'off' : usualPort);
  if (port === 'off') return undefined;
  const health = () =>
    lookAfter({
      store: app.store.answers,
      discord: platforms.isDiscordConnected,
      room: platforms.isRoomOpen,
      reminders: () => reminders?.isWorking() ?? 'off',
    });
  const metrics = () =>
    counts.text({
      discordConnected: () => platforms.isDiscordConnected() === true,
      phonesListening: platforms.phonesListening,
    });
  return keepConnected({
    connect: async () => {
      const { startMonitor } = await import('../monitor/startMonitor.ts');
      const settings = { bind: MONITOR_BIND, port, ...definedOnly({ token: MONITOR_TOKEN }) };
      const monitor = await startMonitor(settings, { health, metrics });
      log.info({}, monitorWords.at(monitor.url));
      return monitor;
    },
    // The rest of the program does not need it.
    isFinal: () => false,
    giveUp: () => undefined,
    sentence: (why) =>
      why instanceof Error && 'code' in why && why.code === 'EADDRINUSE'
        ? monitorWords.inUse(port)
        : monitorWords.troubled,
    log,
  });
};
