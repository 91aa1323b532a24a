import { SqliteError } from 'better-sqlite3';

export type StoreProblemKind =
  /** Another process owns the file. */
  | 'locked'
  /** Something else held on to the file for longer than we waited. */
  | 'busy'
  | 'corrupt'
  /** A database, but of another program. */
  | 'not-ours'
  | 'read-only'
  | 'full'
  /** More is asked at once than can wait. */
  | 'crowded'
  /** A newer release has migrated it. */
  | 'newer-schema'
  /** To look at only, but not migrated yet. */
  | 'older-schema'
  | 'failed-migration'
  | 'cannot-open'
  | 'input-output'
  /** A copy would overwrite it. */
  | 'exists'
  | 'closed';

/** What is wrong with the file itself, as against a bug in what we asked of it. */
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

const kinds: readonly (readonly [prefix: string, kind: StoreProblemKind])[] = [
  ['SQLITE_BUSY', 'busy'],
  ['SQLITE_LOCKED', 'busy'],
  ['SQLITE_CORRUPT', 'corrupt'],
  ['SQLITE_NOTADB', 'corrupt'],
  ['SQLITE_READONLY', 'read-only'],
  ['SQLITE_PERM', 'read-only'],
  ['SQLITE_FULL', 'full'],
  ['SQLITE_CANTOPEN', 'cannot-open'],
  ['SQLITE_IOERR', 'input-output'],
];

/** The same from the system itself, which makes folders and files beside the database. */
const systemKinds: Readonly<Record<string, StoreProblemKind>> = {
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

/** The problem with the file that an error tells of; any other error comes back as it is. */
export const asStoreProblem = (error: unknown, file: string): unknown => {
  if (error instanceof Error && 'syscall' in error && 'code' in error) {
    const kind = systemKinds[String(error.code)];
    return kind ? new StoreProblem(kind, file, error.message, error) : error;
  }
  if (!(error instanceof SqliteError)) return error;
  const kind = kinds.find(([prefix]) => error.code.startsWith(prefix))?.[1];
  return kind ? new StoreProblem(kind, file, error.message, error) : error;
};
