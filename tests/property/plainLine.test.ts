import fc from 'fast-check';
import { expect, it } from 'vitest';
import { readPlainLine } from '../../src/parse/plain/readPlainLine.ts';
import { bucketOf } from '../helpers/plainBuckets.ts';

const buckets = [
  bucketOf(1, 'Gull Grey', 'gg'),
  bucketOf(4, 'Sandbar', 'sb'),
  bucketOf(7, 'Cone 6 Clear', 'c6'),
];
const world = { buckets, units: 'metric', vessels: ['steel cup'], cups: ['hall cup'] } as const;

const word = fc.constantFrom(
  ...'gull grey sandbar 4 7 1.46 1,44 13 s sec 500ml water added stirred sieved not after off from to cup bucket # 1/2 thick lumps yesterday 9pm ago glaze ?'.split(
    ' ',
  ),
);
const line = fc.oneof(
  fc.string({ unit: 'binary', maxLength: 300 }),
  fc.array(word, { maxLength: 14 }).map((words) => words.join(' ')),
);

it('any line is read, the same way each time', () => {
  fc.assert(
    fc.property(line, (typed) => {
      const read = readPlainLine(typed, world);
      expect(readPlainLine(typed, world)).toEqual(read);
    }),
  );
});

it('every digit of a line is in its draft or told as not understood', () => {
  fc.assert(
    fc.property(fc.array(word, { maxLength: 14 }), (words) => {
      const typed = words.join(' ');
      const read = readPlainLine(typed, world);
      if (read.kind !== 'draft') return;
      const told = [
        ...Object.values(read.typed),
        ...read.unread,
        read.maybe?.typed ?? '',
        read.bucket?.typed ?? '',
      ].join(' ');
      const digits = (text: string) => text.replace(/\D/g, '').split('').sort().join('');
      // A bucket that glaze came from is told by its number.
      if (read.typed['from'] === undefined) expect(digits(told)).toBe(digits(typed));
    }),
  );
});
