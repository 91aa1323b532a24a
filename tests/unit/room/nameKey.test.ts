import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { cleanName } from '../../../src/room/access/cleanName.ts';
import { nameKey } from '../../../src/text/normalizedName.ts';
import { nameLook } from '../../../src/studio/nameLook.ts';

describe('a name in the room', () => {
  it('is shown as it was typed, without what hides or turns letters', () => {
    expect(cleanName('  Wren   of the Marsh ')).toBe('Wren of the Marsh');
    expect(cleanName('Zoë O’Hara-Smith Jr.')).toBe('Zoë O’Hara-Smith Jr.');
    expect(cleanName('Женя')).toBe('Женя');
    for (const typed of [
      '',
      ' ',
      '7',
      'a\u202Eb',
      'a\u200Bb',
      'a\nb\u0000',
      '<b>',
      'x'.repeat(41),
      '@all',
      '🦆',
    ])
      expect(cleanName(typed), JSON.stringify(typed)).toBeUndefined();
  });

  it('has letters of one script', () => {
    expect(cleanName('W\u0440en')).toBeUndefined();
    expect(cleanName('\u039Fdile')).toBeUndefined();
  });

  it('is the same as another that people would take for it', () => {
    for (const typed of ['wren', 'WREN', 'W ren', 'Wrén', 'Ｗｒｅｎ', 'wr-en.'])
      expect(nameKey(typed)).toBe('wren');
    expect(nameKey('Wrenn')).not.toBe('wren');
  });

  it('looks the same when it is drawn the same in another alphabet, and only then', () => {
    // Wholly Cyrillic, then wholly Greek: each letter of them is on the Unicode list of confusables.
    expect(nameLook('\u0420\u041E\u0421\u0410')).toBe(nameLook('POCA'));
    expect(nameLook('\u0391\u039D\u039D\u0391')).toBe(nameLook('Anna'));
    expect(nameLook('Женя')).not.toBe(nameLook('Zhenya'));
    expect(nameLook('Wren')).not.toBe(nameLook('Wrenn'));
  });

  it('keeps its key however it is cleaned, and is clean when cleaned once', () => {
    fc.assert(
      fc.property(fc.string({ unit: 'grapheme', maxLength: 40 }), (typed) => {
        const name = cleanName(typed);
        if (name === undefined) return;
        expect(cleanName(name)).toBe(name);
        expect(nameKey(name)).toBe(nameKey(typed));
        expect(nameKey(name)).not.toBe('');
      }),
    );
  });
});
