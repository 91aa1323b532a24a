import { describe, expect, it } from 'vitest';
import { findMaterial, materials } from '../../../../src/glaze/materials/materials.ts';
import { solidsGravityRange } from '../../../../src/glaze/slurry/slurry.ts';
import { referenceRows, word } from '../../../helpers/glaze/referenceRows.ts';

describe('the table of glaze materials', () => {
  it('is large enough for a studio and names each material and each other name once', () => {
    expect(materials.length).toBeGreaterThanOrEqual(45);
    const names = materials.flatMap(({ id, aliases }) => [id, ...aliases]);
    expect(names.filter((name, i) => names.indexOf(name) !== i)).toEqual([]);
    for (const material of materials)
      for (const name of [material.id, material.name, ...material.aliases])
        expect(findMaterial(name)?.id, name).toBe(material.id);
  });

  it.each(materials)('$id lies within its own range, with a source', ({ gravity, low, high, source }) => {
    expect(low).toBeLessThanOrEqual(gravity);
    expect(gravity).toBeLessThanOrEqual(high);
    expect(low).toBeGreaterThanOrEqual(solidsGravityRange.low);
    expect(high).toBeLessThanOrEqual(solidsGravityRange.high);
    expect(source).not.toBe('');
  });

  it.each(referenceRows.filter(({ topic }) => topic === 'solid-density'))(
    '$id: its range reaches over the published one [$seen] $source',
    (row) => {
      const material = findMaterial(word(row, 'material'));
      const [low = Number.NaN, high = Number.NaN] = row.expected.range ?? [];
      expect(material?.low).toBeLessThanOrEqual(low + 1e-9);
      expect(material?.high).toBeGreaterThanOrEqual(high - 1e-9);
    },
  );

  it.each([
    ['Potash Feldspar', 'potash-feldspar'],
    ['potash felspar', 'potash-feldspar'],
    ['SILICA', 'quartz'],
    ['  China   clay ', 'kaolin'],
    ['aluminum hydroxide', 'alumina-hydrate'],
    ['Magnesium Sulphate', 'epsom-salt'],
    ['Iron oxide, red', 'red-iron-oxide'],
    ['alumina (calcined)', 'calcined-alumina'],
  ])('finds %j', (typed, id) => expect(findMaterial(typed)?.id).toBe(id));

  it('guesses nothing', () => {
    for (const typed of ['', 'clay?', 'felds', 'constructor']) expect(findMaterial(typed)).toBeUndefined();
  });

  // the keeper's list of what wants more care in a glaze room
  it.each([
    ['barium-carbonate', 'barium'],
    ['manganese-dioxide', 'manganese'],
    ['nickel-oxide', 'nickel'],
    ['chrome-oxide', 'chromium'],
    ['cobalt-carbonate', 'cobalt'],
    ['copper-oxide', 'copper'],
    ['ulexite', 'boron'],
    ['spodumene', 'lithium'],
    ['vanadium-pentoxide', 'vanadium'],
    ['red-lead', 'lead'],
    ['soda-ash', 'caustic'],
    ['quartz', 'silica dust'],
  ] as const)('marks %s with %s', (id, caution) => {
    expect(findMaterial(id)?.cautions).toContain(caution);
  });
});
