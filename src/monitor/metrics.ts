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
const series = <L extends string, V>(fresh: () => V) => {
  const held = new Map<string, { labels: Labels<L>; value: V }>();
  return {
    at(labels: Labels<L>): { labels: Labels<L>; value: V } {
      const key = Object.values(labels).join('\u0000');
      const known = held.get(key) ?? { labels, value: fresh() };
      held.set(key, known);
      return known;
    },
    all: () => [...held.values()],
  };
};

/** Counts what only grows. */
export const counter = <L extends string = never>(name: string, help: string) => {
  const counted = series<L, number>(() => 0);
  return {
    add(labels: Labels<L>, by = 1): void {
      counted.at(labels).value += by;
    },
    text: () =>
      headed(
        name,
        help,
        'counter',
        counted.all().map(({ labels, value }) => line(name, labels, value)),
      ),
  };
};

/** Something that goes up and down, looked at when somebody asks. */
export const gauge = (
  name: string,
  help: string,
  look: () => number,
  type: 'gauge' | 'counter' = 'gauge',
): Metric => ({ text: () => headed(name, help, type, [line(name, {}, look())]) });

/** How long things took, in seconds, by upper limits. */
export const histogram = <L extends string = never>(
  name: string,
  help: string,
  limits: readonly number[],
) => {
  const timed = series<L, { within: number[]; count: number; sum: number }>(() => ({
    within: limits.map(() => 0),
    count: 0,
    sum: 0,
  }));
  return {
    observe(labels: Labels<L>, seconds: number): void {
      const { value } = timed.at(labels);
      value.count += 1;
      value.sum += seconds;
      limits.forEach((limit, i) => {
        if (seconds <= limit) value.within[i] = (value.within[i] ?? 0) + 1;
      });
    },
    text() {
      const lines = timed
        .all()
        .flatMap(({ labels, value: { within, count, sum } }) => [
          ...limits.map((limit, i) =>
            line(`${name}_bucket`, { le: printed(limit), ...labels }, within[i] ?? 0),
          ),
          line(`${name}_bucket`, { le: '+Inf', ...labels }, count),
          line(`${name}_sum`, labels, sum),
          line(`${name}_count`, labels, count),
        ]);
      return headed(name, help, 'histogram', lines);
    },
  };
};
