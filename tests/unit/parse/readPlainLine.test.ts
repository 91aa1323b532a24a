import { describe, expect, it } from 'vitest';
import { readPlainLine } from '../../../src/parse/plain/readPlainLine.ts';
import { bucketOf } from '../../helpers/plainBuckets.ts';

const buckets = [
  bucketOf(1, 'Gull Grey', 'gg'),
  bucketOf(2, 'Gull Wing', 'gw'),
  bucketOf(3, 'Cone 6 Clear', 'c6'),
  bucketOf(4, 'Sandbar', 'sb'),
  bucketOf(13, 'Dory Blue', 's'),
];
const world = { buckets, units: 'metric', vessels: ['steel cup', 'A'], cups: ['hall cup'] } as const;

/** The draft as one text: command, bucket, options, and what was not read. */
const drafted = (line: string): string => {
  const read = readPlainLine(line, world);
  if (read.kind !== 'draft') return read.kind;
  const numbers = read.bucket?.buckets.map(({ no }) => no).join('|') ?? '?';
  const options = Object.entries(read.typed).map(([name, value]) => `${name}:${value}`);
  return [
    `${read.command} ${numbers}`,
    ...options.sort(),
    ...read.unread.map((one) => `“${one}”`),
    ...(read.maybe ? [`${read.maybe.option}?${read.maybe.value}`] : []),
  ].join(' ');
};

describe('a plain line that says what was measured', () => {
  it.each([
    ['gull grey 1.46 13 sec stirred', 'reading 1 gravity:1.46 seconds:13 sec stirred:yes'],
    ['gul gray 1,46 13s', 'reading 1 gravity:1,46 seconds:13 s'],
    ['4 1.46 after stir 10 min', 'reading 4 gravity:1.46 note:after stir 10 min stirred:yes'],
    ['bucket 4 229.9g cup A 14sec', 'reading 4 seconds:14 sec vessel:A weight:229.9 g'],
    ['bucket 4 229.9g steel cup 14sec', 'reading 4 seconds:14 sec vessel:steel cup weight:229.9 g'],
    ['cone 6 clear 1.5 16s', 'reading 3 gravity:1.5 seconds:16 s'],
    ['#4 sg 1.44', 'reading 4 gravity:1.44'],
    ['Sandbar: 1460, 1:05', 'reading 4 gravity:1.46 seconds:1:05'],
    ['sandbar 1 min 5 s ford 4', 'reading 4 cup:ford4 seconds:1 min 5 s'],
    ['sb 44 be', 'reading 4 gravity:44 be'],
    ['sb 1.44 hall cup 14 sce', 'reading 4 cup:hall cup gravity:1.44 seconds:14 sec'],
    ['sandbar 1.50 not stirred', 'reading 4 gravity:1.50 stirred:no'],
    ['sandbar 1.50 unstirred', 'reading 4 gravity:1.50 stirred:no'],
    ['gg 2 lb 3 oz 18C', 'reading 1 temperature:18 C weight:2 lb 3 oz'],
    ['gull grey looks good, clear water on top', 'reading 1 look:right seen:clear-water'],
    ['sandbar 1.44 yesterday 9pm', 'reading 4 gravity:1.44 when:yesterday 9pm'],
    ['sandbar 1.44 20 min ago', 'reading 4 gravity:1.44 when:20 min ago'],
    ['1.46 13s', 'reading ? gravity:1.46 seconds:13 s'],
    ['gull 1.46', 'reading 1|2 gravity:1.46'],
    ['<b>gull grey</b> **1.46** `13s` <@123456>', 'reading 1 gravity:1.46 seconds:13 s'],
    ['gull grey is two thirds full', 'reading 1 level:two thirds'],
    ['sandbar about half full', 'reading 4 level:half'],
    ['gg 2/3 full, stirred', 'reading 1 level:2/3 stirred:yes'],
    ['level of sandbar is 60%', 'reading 4 level:60%'],
    ['sandbar volume 12 l', 'reading 4 level:12 l'],
    ['12 litres left in sandbar', 'reading 4 level:12 litres'],
    ['gg 1.44 14 sec stirred half full', 'reading 1 gravity:1.44 level:half seconds:14 sec stirred:yes'],
    ['gull grey has a hard cake at the bottom', 'reading 1 seen:cake'],
    ['gull grey froze last night', 'reading 1 seen:ice when:last night'],
    ['Ｓandbar １.４６ ١٣ s', 'reading 4 gravity:1.46 seconds:13 s'],
  ])('%s', (line, draft) => {
    expect(drafted(line)).toBe(draft);
  });

  it('two hours after a stir is not stirred just before', () => {
    expect(drafted('2 h after stirring gull grey 1.46')).toBe(
      'reading 1 gravity:1.46 note:2 h after stirring',
    );
  });

  it('says what it did not understand, a denial whole', () => {
    expect(drafted('gull grey 1.46 smells mouldy')).toBe('reading 1 gravity:1.46 “smells mouldy”');
    expect(drafted('gull grey 1.45 no lumps')).toBe('reading 1 gravity:1.45 “no lumps”');
    expect(drafted('sandbar 1.44 1.46')).toBe('reading 4 gravity:1.44 “1.46”');
  });

  it('guesses at no number without a unit, but says what it may be', () => {
    expect(drafted('gg 1.46 14')).toBe('reading 1 gravity:1.46 seconds?14');
    expect(drafted('weighed 4 at 229.9')).toBe('reading 4 weight?229.9g');
  });

  it('takes a number for a bucket only when it can be none of the measures', () => {
    expect(drafted('1.46 14s 4')).toBe('reading 4 gravity:1.46 seconds:14 s');
    expect(drafted('1.46 4')).toBe('reading ? gravity:1.46 seconds?4');
    expect(drafted('13 sec gull grey')).toBe('reading 1 seconds:13 sec');
  });
});

describe('a plain line that says what was done', () => {
  it.each([
    ['4: stirred 5 min', 'stirred 4 minutes:5 min'],
    ['stired sandbar 3min with drill', 'stirred 4 minutes:3 min with:drill'],
    ['sieved 4', 'sieved 4'],
    ['seived gull grey 80 mesh', 'sieved 1 mesh:80'],
    ['added 500ml water to 4', 'added 4 amount:500 ml what:water'],
    ['4 added half a cup of water', 'added 4 amount:1/2 cup what:water'],
    ['added powder 300g to gg', 'added 1 amount:300 g what:dry'],
    ['5 drops of water glass added to gg', 'added 1 amount:5 drops what:deflocculant'],
    ['poured 2 l from gg into sandbar', 'added 4 amount:2 l from:1 what:glaze'],
    ['poured 300 ml water off sandbar', 'added 4 amount:300 ml what:draw-off'],
    ['took 2 l glaze out of 4', 'added 4 amount:2 l what:taken'],
    ['drew off 300ml from sandbar', 'added 4 amount:300 ml'],
    ['added 20g cobalt to 4', 'added 4 amount:20 g what:other “cobalt”'],
    ['added 450 mll water to 4', 'added 4 amount:450 mll what:water'],
    ['added 500 ml water to 4, now half full', 'added 4 amount:500 ml what:water “half full”'],
    ['added 450 to 4', 'added 4 amount:450'],
    ['added 500 ml water and a splash of bleach to 4', 'added 4 amount:500 ml what:water “splash of bleach”'],
  ])('%s', (line, draft) => {
    expect(drafted(line)).toBe(draft);
  });
});

describe('a plain line that logs nothing', () => {
  it.each(['gull grey', 'gul gray', 'gg', '4', '4?', 'sandbar??', 'is 4 ok?', 'water or stir sandbar'])(
    '%s is a bucket',
    (line) => expect(drafted(line)).toBe('bucket'),
  );

  it.each([
    'why is gull grey thin?',
    'should I stir sandbar 5 min',
    'sandbar is too thick',
    'how much water for 4',
    'is sandbar half full?',
    'hello',
    '',
    '\u0007\u001b[31m',
    'мутная глазурь',
    '釉薬が濃い',
  ])('%s is none', (line) => expect(drafted(line)).toBe('none'));

  it('two buckets in one line are asked for one by one', () => {
    expect(drafted('gull grey 1.46, sandbar 1.50')).toBe('several');
  });

  it('what is longer than a few sentences is not searched', () => {
    expect(drafted('gull grey 1.46 '.repeat(60))).toBe('too-long');
    expect(drafted('x'.repeat(4000))).toBe('too-long');
  });
});
