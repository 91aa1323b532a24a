import { monitorEventLoopDelay } from 'node:perf_hooks';
import { monitorWords as w } from '../words/platform/monitorWords.ts';
import { Counter, Gauge, Histogram, type Metric } from './metrics.ts';

const limits = [0.005, 0.01, 0.025, 0.05, 0.1, 0.25, 0.5, 1, 2.5, 5, 10];

/** What a part of the program says of itself when it is asked. */
export interface Looks {
  discordConnected(): boolean;
  phonesListening(): number;
}

/** Everything that is counted while the program runs. No label is a name, an id or a word of anybody’s. */
export class Counts {
  readonly commands = new Counter<'command' | 'kind' | 'platform'>(w.names.commands, w.commands);
  readonly took = new Histogram<'command'>(w.names.took, w.took, limits);
  readonly waited = new Histogram<'work'>(w.names.waited, w.waited, limits);
  readonly reminders = new Counter<'outcome'>(w.names.reminders, w.reminders);
  readonly refused = new Counter<'status'>(w.names.refused, w.refused);
  readonly logged = new Counter<'level'>(w.names.logged, w.logged);
  readonly #delay = monitorEventLoopDelay({ resolution: 20 });

  constructor() {
    this.#delay.enable();
  }

  /** The text that Prometheus reads. */
  text({ discordConnected, phonesListening }: Looks): string {
    const gauges = [
      new Gauge(w.names.discord, w.discord, () => Number(discordConnected())),
      new Gauge(w.names.phones, w.phones, phonesListening),
      new Gauge(w.names.resident, w.resident, () => process.memoryUsage().rss),
      new Gauge(w.names.heap, w.heap, () => process.memoryUsage().heapUsed),
      new Gauge(w.names.delay, w.delay, () => this.#delayed()),
      new Gauge(
        w.names.worked,
        w.worked,
        () => process.cpuUsage().user / 1e6 + process.cpuUsage().system / 1e6,
        'counter',
      ),
      new Gauge(w.names.up, w.up, () => process.uptime()),
    ];
    const all: Metric[] = [
      this.commands,
      this.took,
      this.waited,
      this.reminders,
      this.refused,
      this.logged,
      ...gauges,
    ];
    return all.map((metric) => metric.text()).join('');
  }

  /** The longest delay since somebody last asked, in seconds. */
  #delayed(): number {
    const { max } = this.#delay;
    this.#delay.reset();
    return Math.max(0, max) / 1e9;
  }
}
