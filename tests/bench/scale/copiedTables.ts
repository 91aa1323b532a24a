/** The tables of a studio's own rows, in the order in which they may be filled. Replies are kept for a week, so they are left out. */
export const copiedTables = [
  'members',
  'member_identities',
  'streams',
  'events',
  'notes',
  'reminders',
] as const;

/** So many studios are committed at a time: a copy that was stopped goes on after the last of them. */
export const atOnce = 100;

/** The columns to copy; a reminder's number is given by the database. */
export const copiedColumns = (table: string, columns: readonly string[]): string[] =>
  columns.filter((name) => !(table === 'reminders' && name === 'id'));

export type Tell = (made: number, rowsPerSecond: number) => void;
