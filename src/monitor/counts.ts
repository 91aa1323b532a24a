import { monitorEventLoopDelay } from 'node:perf_hooks';
import { monitorWords as w } from '../words/platform/monitorWords.ts';
import { counter, gauge, histogram } from './metrics.ts';

const limits = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10];

/** What a part of the program says of itself when it is asked. */
export interface Looks {
  discordConnected(): boolean;
  phonesListening(): number;
}

/** Everything that is counted while the program runs. No label is a name, an id or a word of anybody’s. */
export const startCounts = () => {
  const counted = {
    commands: counter<'command' | 'kind' | 'platform'>(w.names.commands, w.commands),
    took: histogram<'command'>(w.names.took, w.took, limits),
    waited: histogram<'work'>(w.names.waited, w.waited, limits),
    reminders: counter<'outcome'>(w.names.reminders, w.reminders),
    refused: counter<'status'>(w.names.refused, w.refused),
    logged: counter<'level'>(w.names.logged, w.logged),
  };
  const delay = monitorEventLoopDelay({ resolution: 20 });
  delay.enable();
  /** The longest delay since somebody last asked, in seconds. */
  const delayed = (): number => {
    const { max } = delay;
    delay.reset();
    return Math.max(0, max) / 1e9;
  };
  const worked = () => process.cpuUsage().user / 1e6 + process.cpuUsage().system / 1e6;
  return {
    ...counted,
    /** The text that Prometheus reads. */
    text: ({ discordConnected, phonesListening }: Looks): string =>
      [
        ...Object.values(counted),
        gauge(w.names.discord, w.discord, () => Number(discordConnected())),
        gauge(w.names.phones, w.phones, phonesListening),
        gauge(w.names.resident, w.resident, () => process.memoryUsage().rss),
        gauge(w.names.heap, w.heap, () => process.memoryUsage().heapUsed),
        gauge(w.names.delay, w.delay, delayed),
        gauge(w.names.worked, w.worked, worked, 'counter'),
        gauge(w.names.up, w.up, () => process.uptime()),
      ]
        .map((metric) => metric.text())
        .join(''),
  };
};
export type Counts = ReturnType<typeof startCounts>;
