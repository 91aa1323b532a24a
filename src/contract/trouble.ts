/** What is wrong with the place where the logbook is, as against a bug: the disk is full, or more is asked at once than can wait. */
export const troubleOf = (error: unknown): 'full' | 'crowded' | undefined => {
  if (!(error instanceof Error) || error.name !== 'StoreProblem' || !('kind' in error)) return undefined;
  return error.kind === 'full' || error.kind === 'crowded' ? error.kind : undefined;
};
