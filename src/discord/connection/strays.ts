/**
 * Known harmless errors of the client: a session that ends while it is resumed (the client starts a new one), and a
 * retry after the client was stopped (nothing is left to retry).
 */
export const harmlessStray = (error: unknown): string | undefined => {
  if (!(error instanceof TypeError)) return undefined;
  if (error.message.includes("reading 'sequence'"))
    return 'the session with Discord ended just after it was resumed; a new one follows';
  return error.message.includes("'sessionInfo'") ? 'a connection to Discord was given up' : undefined;
};
