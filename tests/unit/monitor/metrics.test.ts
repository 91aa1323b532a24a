import { Counter as TheirCounter, Histogram as TheirHistogram, Registry } from 'prom-client';
import { expect, it } from 'vitest';
import { counter, gauge, histogram } from '../../../src/monitor/metrics.ts';

const lines = (text: string) => text.split('\n').filter((line) => line !== '');

/** What the usual client for Prometheus prints of the same counts is the oracle. */
it('prints counts as the usual client does', async () => {
  const registry = new Registry();
  const theirs = new TheirCounter({
    name: 'commands_total',
    help: 'Commands, by “name” and\nkind \\ platform',
    labelNames: ['command', 'kind'],
    registers: [registry],
  });
  const ours = counter<'command' | 'kind'>('commands_total', 'Commands, by “name” and\nkind \\ platform');
  for (const [command, kind, by] of [
    ['bucket show', 'answer', 1],
    ['bucket show', 'refusal', 3],
    ['bucket show', 'answer', 2.5],
    ['a "quoted" \\ and\nbroken', 'answer', 1],
  ] as const) {
    theirs.inc({ command, kind }, by);
    ours.add({ command, kind }, by);
  }
  expect(lines(ours.text())).toEqual(lines(await registry.metrics()));
});

it('prints durations as the usual client does, at a limit and beyond the last one too', async () => {
  const registry = new Registry();
  const theirs = new TheirHistogram({
    name: 'command_seconds',
    help: 'How long',
    labelNames: ['command'],
    buckets: [0.01, 0.5, 2],
    registers: [registry],
  });
  const ours = histogram<'command'>('command_seconds', 'How long', [0.01, 0.5, 2]);
  for (const [command, took] of [
    ['ask', 0.01],
    ['ask', 0.010_000_1],
    ['round', 0],
    ['ask', 7],
    ['round', 2],
  ] as const) {
    theirs.observe({ command }, took);
    ours.observe({ command }, took);
  }
  expect(lines(ours.text())).toEqual(lines(await registry.metrics()));
});

it('looks at what goes up and down when it is asked', () => {
  let phones = 3;
  const phonesNow = gauge('phones', 'Phones', () => phones);
  expect(phonesNow.text()).toContain('\nphones 3\n');
  phones = 0;
  expect(phonesNow.text()).toContain('\nphones 0\n');
});
