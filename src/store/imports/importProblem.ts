/** Why a file is not brought in. */
export type ImportWhy =
  | { kind: 'not-an-export' }
  | { kind: 'newer-format'; format: number }
  /** Exported with a bucket or a number of days. */
  | { kind: 'a-part' }
  | { kind: 'damaged'; line: number }
  | { kind: 'cut-off'; line: number }
  /** A state that its entries don't fold to. */
  | { kind: 'differs'; what: string }
  | { kind: 'no-name' }
  | { kind: 'exists'; name: string }
  | { kind: 'server-known'; server: string };

/** The file, or what was asked for, is refused. Nothing has been written. */
export class ImportProblem extends Error {
  override readonly name = 'ImportProblem';
  readonly why: ImportWhy;

  constructor(why: ImportWhy) {
    super(why.kind);
    this.why = why;
  }
}
