import { createCipheriv, createDecipheriv, randomBytes } from 'node:crypto';

const cipher = 'aes-256-gcm';
const [keyBytes, nonceBytes, tagBytes] = [32, 12, 16];

/** Encrypts a text with a key of its own. Whoever has one of the two learns nothing. */
export const seal = (text: string): { sealed: string; key: string } => {
  const [key, nonce] = [randomBytes(keyBytes), randomBytes(nonceBytes)];
  const closing = createCipheriv(cipher, key, nonce);
  const body = Buffer.concat([closing.update(text, 'utf8'), closing.final()]);
  const sealed = Buffer.concat([nonce, closing.getAuthTag(), body]).toString('base64');
  return { sealed, key: key.toString('base64url') };
};

/** The text; undefined when this is not its key. */
export const unseal = (sealed: string, key: string): string | undefined => {
  const [bytes, given] = [Buffer.from(sealed, 'base64'), Buffer.from(key, 'base64url')];
  if (given.length !== keyBytes || bytes.length < nonceBytes + tagBytes) return undefined;
  const opening = createDecipheriv(cipher, given, bytes.subarray(0, nonceBytes));
  opening.setAuthTag(bytes.subarray(nonceBytes, nonceBytes + tagBytes));
  try {
    return opening.update(bytes.subarray(nonceBytes + tagBytes), undefined, 'utf8') + opening.final('utf8');
  } catch {
    return undefined;
  }
};
