/**
 * What the client is known to trip over without harm: a session that ends in the moment of its resumption, and then
 * is begun anew all the same; and its own retry after it was told to leave, which finds nothing to retry.
 */
export const harmlessStray = (error: unknown): string | undefined => {
  if (!(error instanceof TypeError)) return undefined;
  if (error.message.includes("reading 'sequence'"))
    return 'the session with Discord ended just after it was resumed; a new one follows';
  return error.message.includes("'sessionInfo'") ? 'a connection to Discord was given up' : undefined;
};
