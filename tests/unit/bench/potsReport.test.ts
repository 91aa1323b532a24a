import { expect, it } from 'vitest';
import { Score } from '../../bench/pots/people/score.ts';
import { frontierSvg } from '../../bench/pots/report/frontier.ts';
import { summary } from '../../bench/pots/report/summary.ts';
import { calibrationTable, minutesTable, roomTable } from '../../bench/pots/report/tables.ts';

/** Stirs in haste, which take a minute each. */
const scored = (right: number, minutes: number): Score =>
  Object.assign(new Score(), { visits: 10, dips: 10, right, deeds: { hasteStir: minutes } });

it('gives the mean over seeds and two standard errors of it', () => {
  // 80, 90 and 100 %: a standard deviation of 10, over the root of three, twice: 11.547.
  const { figures } = summary('busy', 'careful', [scored(8, 50), scored(9, 50), scored(10, 50)]);
  expect(figures['right %']?.mean).toBeCloseTo(90, 9);
  expect(figures['right %']?.within).toBeCloseTo(11.547, 3);
  expect(figures.minutes).toEqual({ mean: 5, within: 0 });
});

it('tells which deeds the minutes of a dip went to', () => {
  const score = scored(10, 20);
  score.spend('weigh');
  const [names, values] = minutesTable('busy', [summary('busy', 'bot', [score])])
    .split('\n')
    .map((line) => line.split(/\s{2,}/));
  // Twenty hasty stirs of a minute, and a weighing of one and a half, over ten dips.
  expect(values?.[names?.indexOf('hasteStir') ?? -1]).toBe('2.00');
  expect(values?.[names?.indexOf('weigh') ?? -1]).toBe('0.15');
  expect(score.minutes).toBe(21.5);
});

it('leaves out what nobody counted', () => {
  const table = roomTable('busy', [summary('busy', 'nobody', [scored(1, 5), scored(3, 5)])]);
  expect(table.split('\n')[1]?.split(/\s{2,}/)).toEqual([
    'nobody',
    '20.0 ± 20.0',
    '0.0 ± 0.0',
    '0.0 ± 0.0',
    '0.0 ± 0.0',
    '0.5 ± 0.0',
    '-',
    '-',
    '-',
    '0.0 ± 0.0',
    '0.0 ± 0.0',
  ]);
});

it('holds chances against what was so: of four times at 94 and 96 %, three', () => {
  const score = scored(10, 50);
  for (const [chance, held] of [
    [0.94, true],
    [0.96, true],
    [0.94, true],
    [0.96, false],
  ] as const)
    score.said.push({ chance, true: held });
  expect(
    calibrationTable(summary('busy', 'bot', [score]))
      ?.split('\n')[1]
      ?.split(/\s{2,}/),
  ).toEqual(['93 to 97 %', '4', '95.0', '75.0']);
  expect(calibrationTable(summary('busy', 'careful', [scored(10, 50)]))).toBeUndefined();
});

it('draws every room and everybody in it', () => {
  const svg = frontierSvg(
    ['busy', 'cold'].flatMap((room) =>
      ['careful', 'bot'].map((name) => summary(room, name, [scored(8, 40), scored(9, 60)])),
    ),
  );
  for (const name of ['busy', 'cold', 'careful', 'bot']) expect(svg).toContain(`>${name}</text>`);
});
