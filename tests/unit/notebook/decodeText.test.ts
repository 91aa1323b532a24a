import { describe, expect, it } from 'vitest';
import { decodeText } from '../../../src/notebook/decodeText.ts';

const text = 'Datum;Glasur\n05.03.2026;Möwengrau “dick”\n';
const utf16 = (mark: boolean) => Buffer.from(mark ? `\uFEFF${text}` : text, 'utf16le');

describe('a notebook’s text', () => {
  it.each([
    ['UTF-8', Buffer.from(text)],
    ['UTF-8 with a mark', Buffer.from(`\uFEFF${text}`)],
    ['UTF-16', utf16(true)],
    ['UTF-16 without a mark', utf16(false)],
    ['UTF-16, big end first', utf16(true).swap16()],
    ['UTF-16, big end first, without a mark', utf16(false).swap16()],
    // The bytes of ö, “ and ” in Windows-1252: 0xF6, 0x93 and 0x94 (WHATWG Encoding, index windows-1252).
    [
      'Windows-1252',
      Buffer.from(text.replace('ö', '\u00f6').replace('“', '\u0093').replace('”', '\u0094'), 'latin1'),
    ],
  ])('is read from %s', (_, bytes) => {
    expect(decodeText(bytes)).toEqual({ ok: true, text });
  });

  it('is read in the encoding that was named', () => {
    expect(decodeText(Buffer.from('Möwe'), 'windows-1252')).toEqual({ ok: true, text: 'MÃ¶we' });
    expect(decodeText(Buffer.from([0x4d, 0xf6]), 'utf-8')).toMatchObject({ ok: false, why: 'binary' });
  });

  it('is none in a zip archive, as spreadsheet programs save, nor where there are NUL bytes', () => {
    expect(decodeText(Buffer.from('PK\u0003\u0004 and more'))).toEqual({ ok: false, why: 'archive' });
    expect(decodeText(Buffer.from('Date,SG\n2026-03-05,1.4\u0000\n'))).toEqual({
      ok: false,
      why: 'binary',
      line: 2,
    });
  });
});
