type Labels<L extends string> = Readonly<Record<L, string>>;

const escaped = (text: string): string =>
  text.replaceAll('\\', '\\\\').replaceAll('\n', '\\n').replaceAll('"', '\\"');

const printed = (value: number): string =>
  Number.isFinite(value) ? String(value) : value > 0 ? '+Inf' : value < 0 ? '-Inf' : 'NaN';

const line = (name: string, labels: Readonly<Record<string, string>>, value: number): string => {
  const listed = Object.entries(labels).map(([label, of]) => `${label}="${escaped(of)}"`);
  return `${name}${listed.length > 0 ? `{${listed.join(',')}}` : ''} ${printed(value)}`;
};

const headed = (name: string, help: string, type: string, lines: readonly string[]): string =>
  [`# HELP ${name} ${escaped(help)}`, `# TYPE ${name} ${type}`, ...lines, ''].join('\n');

/** Something that can be printed in the text format of Prometheus, version 0.0.4. */
export interface Metric {
  text(): string;
}

/** Values by their labels. The labels are ours, never what somebody typed: each costs memory for as long as the program runs. */
class Series<L extends string, V> {
  readonly #held = new Map<string, { labels: Labels<L>; value: V }>();

  at(labels: Labels<L>, fresh: () => V): { labels: Labels<L>; value: V } {
    const key = Object.values(labels).join('\u0000');
    const known = this.#held.get(key);
    if (known) return known;
    const made = { labels, value: fresh() };
    this.#held.set(key, made);
    return made;
  }

  all(): { labels: Labels<L>; value: V }[] {
    return [...this.#held.values()];
  }
}

/** Counts what only grows. */
export class Counter<L extends string = never> implements Metric {
  readonly #name: string;
  readonly #help: string;
  readonly #series = new Series<L, number>();

  constructor(name: string, help: string) {
    this.#name = name;
    this.#help = help;
  }

  add(labels: Labels<L>, by = 1): void {
    this.#series.at(labels, () => 0).value += by;
  }

  text(): string {
    const lines = this.#series.all().map(({ labels, value }) => line(this.#name, labels, value));
    return headed(this.#name, this.#help, 'counter', lines);
  }
}

/** Something that goes up and down, looked at when somebody asks. */
export class Gauge implements Metric {
  readonly #name: string;
  readonly #help: string;
  readonly #look: () => number;
  readonly #type: 'gauge' | 'counter';

  constructor(name: string, help: string, look: () => number, type: 'gauge' | 'counter' = 'gauge') {
    this.#name = name;
    this.#help = help;
    this.#look = look;
    this.#type = type;
  }

  text(): string {
    return headed(this.#name, this.#help, this.#type, [line(this.#name, {}, this.#look())]);
  }
}

/** How long things took, in seconds, by upper limits. */
export class Histogram<L extends string = never> implements Metric {
  readonly #name: string;
  readonly #help: string;
  readonly #limits: readonly number[];
  readonly #series = new Series<L, { within: number[]; count: number; sum: number }>();

  constructor(name: string, help: string, limits: readonly number[]) {
    this.#name = name;
    this.#help = help;
    this.#limits = limits;
  }

  observe(labels: Labels<L>, seconds: number): void {
    const { value } = this.#series.at(labels, () => ({
      within: this.#limits.map(() => 0),
      count: 0,
      sum: 0,
    }));
    value.count += 1;
    value.sum += seconds;
    this.#limits.forEach((limit, i) => {
      if (seconds <= limit) value.within[i] = (value.within[i] ?? 0) + 1;
    });
  }

  text(): string {
    const lines = this.#series
      .all()
      .flatMap(({ labels, value: { within, count, sum } }) => [
        ...this.#limits.map((limit, i) =>
          line(`${this.#name}_bucket`, { le: printed(limit), ...labels }, within[i] ?? 0),
        ),
        line(`${this.#name}_bucket`, { le: '+Inf', ...labels }, count),
        line(`${this.#name}_sum`, labels, sum),
        line(`${this.#name}_count`, labels, count),
      ]);
    return headed(this.#name, this.#help, 'histogram', lines);
  }
}
