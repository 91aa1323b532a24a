import { StoreProblem, type StoreProblemKind } from '../storeProblem.ts';

/** PostgreSQL's own codes, by prefix, as in appendix A of its manual. */
const kinds: readonly (readonly [prefix: string, kind: StoreProblemKind])[] = [
  ['28', 'denied'],
  ['3D000', 'no-database'],
  ['42501', 'no-rights'],
  ['25006', 'no-rights'],
  ['53100', 'full'],
  ['53300', 'crowded'],
  ['53', 'crowded'],
  ['55P03', 'busy'],
  ['40', 'busy'],
  ['58030', 'input-output'],
  ['XX001', 'corrupt'],
  ['XX002', 'corrupt'],
  ['08', 'unreachable'],
  ['57P', 'unreachable'],
];

/** What Node says of a connection. */
const lostCodes: ReadonlySet<string> = new Set([
  'ECONNREFUSED',
  'ECONNRESET',
  'ECONNABORTED',
  'EPIPE',
  'ENOTFOUND',
  'EAI_AGAIN',
  'ETIMEDOUT',
  'EHOSTUNREACH',
  'ENETUNREACH',
  'ENOENT',
]);

/** The driver has no code for these. */
const lostSentences =
  /^Connection terminated|timeout exceeded when trying to connect|^Client has encountered a connection error|^Postgres connection has been discarded|^Client was closed|does not support SSL/;

const codeOf = (error: Error): string => ('code' in error ? String(error.code) : '');

/** The server's own word, which says that a transaction has failed; a lost connection says nothing. */
export const sqlStateOf = (error: unknown): string | undefined => {
  if (!(error instanceof Error)) return undefined;
  const code = codeOf(error);
  return /^[0-9A-Z]{5}$/.test(code) && 'severity' in error ? code : undefined;
};

const kindOf = (error: Error): StoreProblemKind | undefined => {
  const state = sqlStateOf(error);
  if (state !== undefined) return kinds.find(([prefix]) => state.startsWith(prefix))?.[1];
  if (error instanceof AggregateError && error.errors.some((one) => one instanceof Error && kindOf(one)))
    return 'unreachable';
  return lostCodes.has(codeOf(error)) || lostSentences.test(error.message) ? 'unreachable' : undefined;
};

/** Trouble with the database, as a StoreProblem; any other error is returned unchanged. */
export const asPostgresProblem = (error: unknown, name: string): unknown => {
  if (!(error instanceof Error) || error instanceof StoreProblem) return error;
  const kind = kindOf(error);
  return kind ? new StoreProblem(kind, name, error.message, error) : error;
};

/** Whether the same work may succeed when it is tried again: a deadlock, a conflict, or a lost connection. */
export const isPassing = (error: unknown): boolean => {
  const state = sqlStateOf(error);
  if (state === '40001' || state === '40P01') return true;
  return error instanceof Error && kindOf(error) === 'unreachable';
};

/** Whether the server's word is missing: what was to be committed may be there or not. */
export const isUnsure = (error: unknown): boolean => {
  const state = sqlStateOf(error);
  return state === undefined || state.startsWith('08') || state.startsWith('57P');
};
