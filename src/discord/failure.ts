import { DiscordAPIError, HTTPError } from 'discord.js';

/**
 * Discord's error codes for messages. "Unknown webhook" is its answer for an interaction that was not answered in time.
 */
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
 * Why a request failed: Discord's own reason; it never got there (`unreached`); or the connection broke and nobody
 * knows whether it arrived (`cut`). Server errors are `cut` too, once the client has stopped retrying them.
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

/** An error without its request: the URL contains the token, and the body a member's words. */
export const forLog = (error: unknown): { err: unknown } => {
  if (!(error instanceof DiscordAPIError || error instanceof HTTPError)) return { err: error };
  const { name, message, status, method, stack } = error;
  return { err: { type: name, message, status, method, stack } };
};
