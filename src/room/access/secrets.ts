import { createHash, randomBytes, scrypt, timingSafeEqual, type ScryptOptions } from 'node:crypto';
import { promisify } from 'node:util';

/** scrypt cost: 32 MiB and about a tenth of a second for each guess. */
const scryptCost = { N: 2 ** 15, r: 8, p: 1, maxmem: 64 * 1024 * 1024 };
const bytes = 32;

const scryptKey = promisify<string, Buffer, number, ScryptOptions, Buffer>(scrypt);
const derive = (secret: string, salt: Buffer) => scryptKey(secret.normalize('NFKC'), salt, bytes, scryptCost);

export const hashSecret = async (secret: string): Promise<string> => {
  const salt = randomBytes(16);
  const key = await derive(secret, salt);
  return `scrypt:${salt.toString('base64url')}:${key.toString('base64url')}`;
};

const nobody = `scrypt:${Buffer.alloc(16).toString('base64url')}:${Buffer.alloc(bytes).toString('base64url')}`;

/**
 * Compares a secret with its hash. Without a hash it takes as long, so that timing does not reveal whether the name
 * exists.
 */
export const matchesHash = async (secret: string, seal: string | undefined): Promise<boolean> => {
  const [, salt = '', kept = ''] = (seal ?? nobody).split(':');
  const key = await derive(secret, Buffer.from(salt, 'base64url'));
  const expected = Buffer.from(kept, 'base64url');
  return expected.length === key.length && timingSafeEqual(expected, key) && seal !== undefined;
};

export const freshToken = (): string => randomBytes(32).toString('base64url');

/** A fast hash is enough for a long random token, which cannot be guessed. */
export const tokenHash = (token: string): string => createHash('sha256').update(token).digest('base64url');

const letters = '23456789abcdefghjkmnpqrstuvwxyz';

/** Normalises a typed passcode: a generated one may be typed in capitals or without its hyphen. */
export const readPasscode = (typed: string): string => {
  const bare = typed.toLowerCase().replace(/[\s-]/g, '');
  const ours = bare.length === 10 && [...bare].every((letter) => letters.includes(letter));
  return ours ? `${bare.slice(0, 5)}-${bare.slice(5)}` : typed.trim();
};

/** Ten letters and digits that do not look alike, to read out and type: 49 bits. */
export const freshPasscode = (): string => {
  let code = '';
  while (code.replaceAll('-', '').length < 10) {
    const byte = randomBytes(1)[0] ?? 255;
    if (byte >= letters.length * 8) continue;
    code += `${code.length === 5 ? '-' : ''}${letters.charAt(byte % letters.length)}`;
  }
  return code;
};
