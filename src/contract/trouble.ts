/** Trouble with the machine rather than a bug: the disk is full, or too many requests are queued. */
export const troubleOf = (error: unknown): 'full' | 'crowded' | undefined => {
  if (!(error instanceof Error) || error.name !== 'StoreProblem' || !('kind' in error)) return undefined;
  return error.kind === 'full' || error.kind === 'crowded' ? error.kind : undefined;
};
