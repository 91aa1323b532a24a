import { describe, expect, it } from 'vitest';
import { plainText } from '../../../src/contract/plainText.ts';
import { readParts, readRecipe } from '../../../src/parse/readRecipe.ts';
import { recipeWords } from '../../../src/words/batch/recipeWords.ts';
import { noonPlus } from '../../helpers/store/storeEvents.ts';

const lines = (typed: string) => {
  const read = readRecipe(typed);
  if (!read.ok) throw new Error(read.why.kind);
  return read.value.lines.map(({ material, amount, addition }) => [material, amount, addition]);
};

describe('a recipe', () => {
  it.each([
    'feldspar 37, silica 26, whiting 21, kaolin 16, + red iron oxide 3',
    'feldspar 37; silica 26; whiting 21; kaolin 16; +red iron oxide 3',
    'feldspar: 37\nsilica: 26\nwhiting: 21\nkaolin: 16\n+ red iron oxide: 3',
    '37 feldspar, 26 silica, 21 whiting, 16 kaolin, + 3 red iron oxide',
    'feldspar 37%, silica 26 %, whiting 21%, kaolin 16%, plus red iron oxide 3%',
    'feldspar 37,0, silica 26, whiting 21, kaolin 16, add red iron oxide 3',
    '37 parts of feldspar, silica 26 parts, whiting 21, kaolin 16, and + red iron oxide 3',
    'feldspar 37, silica 26, whiting 21, kaolin 16; over it red iron oxide 3',
    'feldspar 37, silica 26, whiting 21, kaolin 16, over it: 3 red iron oxide',
    'feldspar 37\nsilica 26\nwhiting 21\nkaolin 16\nOver the base\nred iron oxide 3',
  ])('is read however it is written: %j', (typed) => {
    expect(lines(typed)).toEqual([
      ['feldspar', 37, false],
      ['silica', 26, false],
      ['whiting', 21, false],
      ['kaolin', 16, false],
      ['red iron oxide', 3, true],
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

  it('takes all that follows “over it” for additions, in per cent too', () => {
    // 3 % and 2 % of 5 parts
    expect(lines('feldspar 3, clay 2; over it tin oxide 3%, and + rutile 2 %')).toEqual([
      ['feldspar', 3, false],
      ['clay', 2, false],
      ['tin oxide', 0.15, true],
      ['rutile', 0.1, true],
    ]);
  });

  it('refuses a recipe of additions only', () => {
    expect(readRecipe('over it tin oxide 4')).toMatchObject({ ok: false, why: { kind: 'sums-to-zero' } });
    expect(readRecipe('over it')).toMatchObject({ ok: false, why: { kind: 'nothing' } });
  });

  it('adds up a material that is listed twice, and leaves out one with 0', () => {
    expect(lines('clay 20, silica 0, Clay 5')).toEqual([['clay', 25, false]]);
  });

  it.each([
    'feldspar 37, silica 26, whiting 21, kaolin 16',
    'feldspar 37, silica 26, + tin oxide 4.5, whiting 37, + rutile 0.25',
    '+ red iron oxide 3, frit 12 40, clay 60',
  ])('comes back the same from how it is written out: %j', (typed) => {
    const read = readRecipe(typed);
    if (!read.ok) throw new Error(read.why.kind);
    const again = readRecipe(
      plainText(recipeWords.lines(read.value.lines), { now: noonPlus(0), zone: 'UTC' }),
    );
    const baseFirst = read.value.lines.toSorted((a, b) => Number(a.addition) - Number(b.addition));
    expect(again).toEqual({ ok: true, value: { lines: baseFirst } });
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
