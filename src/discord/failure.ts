import { DiscordAPIError, HTTPError } from 'discord.js';

/** The platform's codes for what may go wrong with a message; it knows no webhook of an interaction not answered in time. */
const CODES = {
  10003: 'no-channel',
  10004: 'no-channel',
  10007: 'no-member',
  10008: 'no-message',
  10015: 'too-late',
  10062: 'too-late',
  40060: 'answered',
  50001: 'no-permission',
  50007: 'closed',
  50013: 'no-permission',
  50027: 'too-late',
  50278: 'closed',
} as const;

/**
 * Why a request failed: the platform said so; it never got there (`unreached`); or the connection broke
 * and nobody knows whether it did (`cut`). The client tries server errors again by itself, and gives them
 * up as `cut` too.
 */
export type Failure = (typeof CODES)[keyof typeof CODES] | 'cut' | 'unreached' | 'refused';

const UNREACHED = /ECONNREFUSED|ENOTFOUND|EAI_AGAIN|ENETUNREACH|EHOSTUNREACH|UND_ERR_CONNECT_TIMEOUT/;

export const failureOf = (error: unknown): Failure => {
  if (error instanceof DiscordAPIError) return isKnown(error.code) ? CODES[error.code] : 'refused';
  if (error instanceof HTTPError) return 'cut';
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return UNREACHED.test(code) ? 'unreached' : 'cut';
};

const isKnown = (code: number | string): code is keyof typeof CODES => code in CODES;

/** An error as it may be written down: without the request, whose address has the token and whose body a member's words. */
export const forLog = (error: unknown): { err: unknown } => {
  if (!(error instanceof DiscordAPIError || error instanceof HTTPError)) return { err: error };
  const { name, message, status, method, stack } = error;
  return { err: { type: name, message, status, method, stack } };
};
