import { describe, expect, it } from 'vitest';
import { readParts, readRecipe } from '../../../src/parse/readRecipe.ts';

const lines = (typed: string) => {
  const read = readRecipe(typed);
  if (!read.ok) throw new Error(read.why.kind);
  return read.value.lines.map(({ material, amount, addition }) => [material, amount, addition]);
};

describe('a recipe', () => {
  it.each([
    'feldspar 40, silica 30, whiting 20, kaolin 10, + red iron oxide 4',
    'feldspar 40; silica 30; whiting 20; kaolin 10; +red iron oxide 4',
    'feldspar: 40\nsilica: 30\nwhiting: 20\nkaolin: 10\n+ red iron oxide: 4',
    '40 feldspar, 30 silica, 20 whiting, 10 kaolin, + 4 red iron oxide',
    'feldspar 40%, silica 30 %, whiting 20%, kaolin 10%, plus red iron oxide 4%',
    'feldspar 40,0, silica 30, whiting 20, kaolin 10, add red iron oxide 4',
    '40 parts of feldspar, silica 30 parts, whiting 20, kaolin 10, and + red iron oxide 4',
  ])('is read however it is written: %j', (typed) => {
    expect(lines(typed)).toEqual([
      ['feldspar', 40, false],
      ['silica', 30, false],
      ['whiting', 20, false],
      ['kaolin', 10, false],
      ['red iron oxide', 4, true],
    ]);
  });

  it('takes the last of a list for one of it, not for an addition', () => {
    expect(lines('feldspar 50, and kaolin 50')).toEqual([
      ['feldspar', 50, false],
      ['kaolin', 50, false],
    ]);
  });

  it('keeps numbers that belong to a name', () => {
    expect(lines('frit 12 30, clay 70')).toEqual([
      ['frit 12', 30, false],
      ['clay', 70, false],
    ]);
  });

  it('counts an addition in per cent on the sum of the rest, whatever that is', () => {
    expect(lines('feldspar 3, clay 2, + tin oxide 10%')).toContainEqual(['tin oxide', 0.5, true]);
  });

  it('takes a material that stands twice together, and leaves out what is none', () => {
    expect(lines('clay 20, silica 0, Clay 5')).toEqual([['clay', 25, false]]);
  });

  it.each([
    ['', 'nothing'],
    [' , ;', 'nothing'],
    ['feldspar', 'unreadable'],
    ['40', 'unreadable'],
    ['feldspar forty', 'unreadable'],
    ['feldspar -40', 'negative'],
    ['feldspar 1e9', 'unreadable'],
    ['feldspar 99999999', 'too-much'],
    ['feldspar 0', 'sums-to-zero'],
    ['+ tin oxide 4', 'sums-to-zero'],
    [Array.from({ length: 41 }, (_, i) => `clay${i}x 1`).join(','), 'too-long'],
    [`${'x'.repeat(61)} 4`, 'unreadable'],
  ])('is refused: %j', (typed, kind) => {
    expect(readRecipe(typed)).toMatchObject({ ok: false, why: { kind } });
  });

  it('reads gravities of materials in the same way', () => {
    expect(readParts('local clay 2.6, river ash 2.4')).toMatchObject({
      ok: true,
      value: [
        { material: 'local clay', amount: 2.6 },
        { material: 'river ash', amount: 2.4 },
      ],
    });
  });
});
