/** Trouble with the machine rather than a bug: the disk is full, too many requests are queued, or the database is away. */
export const troubleOf = (error: unknown): 'full' | 'crowded' | 'unreachable' | undefined => {
  if (!(error instanceof Error) || error.name !== 'StoreProblem' || !('kind' in error)) return undefined;
  const { kind } = error;
  return kind === 'full' || kind === 'crowded' || kind === 'unreachable' ? kind : undefined;
};
