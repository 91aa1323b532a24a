import { SqliteError } from 'better-sqlite3';

export type StoreProblemKind =
  /** Another process owns the file. */
  | 'locked'
  /** Somebody else held the file for longer than we waited. */
  | 'busy'
  /** Linked under another name, by which another process may own it. */
  | 'several-names'
  | 'corrupt'
  /** A database of another program. */
  | 'not-ours'
  | 'read-only'
  | 'full'
  /** Too many requests are waiting. */
  | 'crowded'
  /** A newer release has migrated it. */
  | 'newer-schema'
  /** Opened read-only, and not migrated yet. */
  | 'older-schema'
  | 'failed-migration'
  | 'cannot-open'
  | 'input-output'
  /** A copy would overwrite an existing file. */
  | 'exists'
  | 'closed'
  /** A database's address that cannot be read. */
  | 'bad-address'
  /** No connection to the server, or it was lost. */
  | 'unreachable'
  /** The server does not let this user in. */
  | 'denied'
  | 'no-database'
  /** The server is older than what the store needs. */
  | 'old-server'
  /** The user may not make tables or write to them. */
  | 'no-rights'
  /** Another process on this database has taken the same connections. */
  | 'part-taken'
  /** A logbook is moved only to where there is none. */
  | 'not-empty'
  /** A copy differs from what was copied. */
  | 'copy-differs';

/** Something is wrong with the file itself; a bug in our queries is not a StoreProblem. */
export class StoreProblem extends Error {
  override readonly name = 'StoreProblem';
  readonly kind: StoreProblemKind;
  readonly file: string;

  constructor(kind: StoreProblemKind, file: string, detail: string, cause?: unknown) {
    super(`${file}: ${kind}: ${detail}`, { cause });
    this.kind = kind;
    this.file = file;
  }
}

/** By the codes of SQLite, without what follows the second word, and of system errors from folders and files beside it. */
const kinds: Readonly<Record<string, StoreProblemKind>> = {
  SQLITE_BUSY: 'busy',
  SQLITE_LOCKED: 'busy',
  SQLITE_CORRUPT: 'corrupt',
  SQLITE_NOTADB: 'corrupt',
  SQLITE_READONLY: 'read-only',
  SQLITE_PERM: 'read-only',
  SQLITE_FULL: 'full',
  SQLITE_CANTOPEN: 'cannot-open',
  SQLITE_IOERR: 'input-output',
  ENOSPC: 'full',
  EDQUOT: 'full',
  EROFS: 'read-only',
  EACCES: 'read-only',
  EPERM: 'read-only',
  EIO: 'input-output',
  ENOENT: 'cannot-open',
  ENOTDIR: 'cannot-open',
  EISDIR: 'cannot-open',
  EMFILE: 'cannot-open',
};

/** The StoreProblem behind an error; any other error is returned unchanged. */
export const asStoreProblem = (error: unknown, file: string): unknown => {
  const isOfFile = error instanceof SqliteError || (error instanceof Error && 'syscall' in error);
  if (!isOfFile || !('code' in error)) return error;
  const kind = kinds[error.code.split('_', 2).join('_')];
  return kind ? new StoreProblem(kind, file, error.message, error) : error;
};
