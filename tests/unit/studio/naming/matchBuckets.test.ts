import { beforeAll, describe, expect, it } from 'vitest';
import type { BucketState } from '../../../../src/studio/bucket/bucketState.ts';
import { foldBucket } from '../../../../src/studio/bucket/fold/foldBucket.ts';
import { streamNo } from '../../../../src/studio/ids.ts';
import { matchBuckets, nearestBuckets } from '../../../../src/studio/naming/matchBuckets.ts';
import { entriesOf } from '../../../helpers/bucketArbitraries.ts';
import { gullGrey } from '../../../helpers/store/storeEvents.ts';

const bucket = (no: number, name: string, nick?: string, retired = false): BucketState => {
  const { nick: _nick, volume: _volume, ...settings } = gullGrey;
  const events = [
    {
      event: { kind: 'setup', settings: { ...settings, name, ...(nick !== undefined && { nick }) } },
      minute: 0,
    },
    ...(retired ? [{ event: { kind: 'retire' }, minute: 1 } as const] : []),
  ] as const;
  const state = foldBucket(streamNo(no), entriesOf(events));
  if (!state) throw new Error('no bucket');
  return state;
};

let room: BucketState[];
beforeAll(() => {
  room = [
    bucket(1, 'Gull Grey', 'gg'),
    bucket(2, 'Gull White', 'gw'),
    bucket(3, 'Heron', 'h'),
    bucket(4, 'Céladon №2', 'cel'),
    bucket(5, 'Tide Pool'),
    bucket(6, 'Old Heron', undefined, true),
    bucket(12, 'Black Sand'),
    bucket(13, 'Шпат'),
  ];
});

const found = (typed: string) => matchBuckets(typed, room).map(({ no }) => no);
const near = (typed: string) => nearestBuckets(typed, room).map(({ no }) => no);

describe('a bucket that is typed', () => {
  it.each([
    ['gg', [1]],
    ['GG', [1]],
    ['Gull Grey', [1]],
    ['gull grey', [1]],
    ['gullgrey', [1]],
    ['gull-grey', [1]],
    ['  gull   grey ', [1]],
    ['grey', [1]],
    ['gull g', [1]],
    ['12', [12]],
    ['#12', [12]],
    ['no 12', [12]],
    ['bucket 12', [12]],
    ['celadon', [4]],
    ['CÉLADON', [4]],
    ['black', [12]],
    ['sand', [12]],
    ['шпат', [13]],
    ['heron', [3]],
    ['old heron', [6]],
    ['6', [6]],
  ])('%s is bucket %j', (typed, numbers) => {
    expect(found(typed)).toEqual(numbers);
  });

  it('that fits several is all of them: it is asked, never guessed', () => {
    expect(found('gull')).toEqual([1, 2]);
    expect(found('g')).toEqual([1, 2]);
  });

  it.each(['nemo', '', '  ', '99', '0', 'gul gery', '🏺', '----'])('%j is none', (typed) => {
    expect(found(typed)).toEqual([]);
  });
});

describe('suggestions while typing', () => {
  it('without a word are all buckets by number, retired ones last', () => {
    expect(near('')).toEqual([1, 2, 3, 4, 5, 12, 13, 6]);
  });

  it.each([
    ['gul', 1],
    ['gull w', 2],
    ['hreon', 3],
    ['gul gery', 1],
    ['tidepool', 5],
    ['pool', 5],
    ['celadn', 4],
    ['blcak', 12],
    ['gw', 2],
    ['12', 12],
  ])('%s has its best match first', (typed, first) => {
    expect(near(typed)[0]).toBe(first);
  });

  it('leave out what is far', () => {
    expect(near('zzzzzz')).toEqual([]);
    expect(near('heron')).toEqual([3, 6]);
  });
});
