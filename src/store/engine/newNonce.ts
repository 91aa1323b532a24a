import { randomBytes } from 'node:crypto';

/** 22 characters that mark repeats of one message; platforms accept up to 25. */
export const newNonce = (): string => randomBytes(16).toString('base64url');
