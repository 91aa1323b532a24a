import { createHash, randomBytes, scrypt, timingSafeEqual } from 'node:crypto';

/** 32 MiB and about a tenth of a second for each guess. */
const cost = { N: 2 ** 15, r: 8, p: 1, maxmem: 64 * 1024 * 1024 };
const bytes = 32;

const derive = (secret: string, salt: Buffer): Promise<Buffer> =>
  new Promise((resolve, reject) =>
    scrypt(secret.normalize('NFKC'), salt, bytes, cost, (error, key) =>
      error ? reject(error) : resolve(key),
    ),
  );

/** A secret as it may be kept: slow to guess from, and of no use to sign in with. */
export const sealed = async (secret: string): Promise<string> => {
  const salt = randomBytes(16);
  const key = await derive(secret, salt);
  return `scrypt:${salt.toString('base64url')}:${key.toString('base64url')}`;
};

const nobody = `scrypt:${Buffer.alloc(16).toString('base64url')}:${Buffer.alloc(bytes).toString('base64url')}`;

/** Whether the secret is the sealed one. Without one it takes as long, so that time tells nothing. */
export const matchesSeal = async (secret: string, seal: string | undefined): Promise<boolean> => {
  const [, salt = '', kept = ''] = (seal ?? nobody).split(':');
  const key = await derive(secret, Buffer.from(salt, 'base64url'));
  const expected = Buffer.from(kept, 'base64url');
  return expected.length === key.length && timingSafeEqual(expected, key) && seal !== undefined;
};

/** A token that cannot be guessed. */
export const freshToken = (): string => randomBytes(32).toString('base64url');

/** Long tokens need no slow hash: nobody can try them all. */
export const tokenHash = (token: string): string => createHash('sha256').update(token).digest('base64url');

const letters = '23456789abcdefghjkmnpqrstuvwxyz';

/** A passcode as it was typed: one of ours also in capitals, or without its hyphen. */
export const readPasscode = (typed: string): string => {
  const bare = typed.toLowerCase().replace(/[\s-]/g, '');
  const ours = bare.length === 10 && [...bare].every((letter) => letters.includes(letter));
  return ours ? `${bare.slice(0, 5)}-${bare.slice(5)}` : typed.trim();
};

/** Ten letters and digits, none that look alike, for people to read out and type: 49 bits. */
export const freshPasscode = (): string => {
  let code = '';
  while (code.replaceAll('-', '').length < 10) {
    const byte = randomBytes(1)[0] ?? 255;
    if (byte >= letters.length * 8) continue;
    code += `${code.length === 5 ? '-' : ''}${letters.charAt(byte % letters.length)}`;
  }
  return code;
};
