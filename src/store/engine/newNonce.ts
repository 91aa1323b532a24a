import { randomBytes } from 'node:crypto';

/** 22 characters that make a repeated message the same one; platforms take up to 25. */
export const newNonce = (): string => randomBytes(16).toString('base64url');
