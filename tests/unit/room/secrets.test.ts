import { describe, expect, it } from 'vitest';
import {
  matchesHash,
  freshPasscode,
  freshToken,
  hashSecret,
  tokenHash,
} from '../../../src/room/access/secrets.ts';

describe('secrets', () => {
  it('match only their own hash, and the hash does not contain them', async () => {
    const [seal, twin] = await Promise.all([hashSecret('oyster catcher'), hashSecret('oyster catcher')]);
    expect(seal).not.toBe(twin);
    expect(seal).not.toContain('oyster');
    expect(await matchesHash('oyster catcher', seal)).toBe(true);
    for (const wrong of ['oyster catche', 'oyster catcher ', 'Oyster catcher', '', seal])
      expect(await matchesHash(wrong, seal)).toBe(false);
  });

  it('match nothing when there is no hash, or a damaged one', async () => {
    for (const seal of [undefined, '', 'scrypt::', `scrypt:${'A'.repeat(22)}:${'A'.repeat(43)}`])
      expect(await matchesHash('', seal)).toBe(false);
  });

  it('match however an accent was typed', async () => {
    expect(await matchesHash('cafe\u0301 cre\u0300me', await hashSecret('caf\u00e9 cr\u00e8me'))).toBe(true);
  });

  it('have no letters that look alike when they are read out, and enough of them', () => {
    const all = Array.from({ length: 200 }, freshPasscode);
    for (const one of all) expect(one).toMatch(/^[2-9a-hjkmnp-z]{5}-[2-9a-hjkmnp-z]{5}$/);
    expect(new Set(all).size).toBe(200);
  });

  it('as tokens hold 256 bits, and are kept as their hash', () => {
    expect(Buffer.from(freshToken(), 'base64url')).toHaveLength(32);
    // FIPS 180-2, appendix B.1: SHA-256 of "abc".
    expect(Buffer.from(tokenHash('abc'), 'base64url').toString('hex')).toBe(
      'ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad',
    );
  });
});
