/** What a cup's seconds are counted as, to learn how well they repeat. */
export const cupReads = (cup: string): string => `cup ${cup}`;

/** What weighings with a vessel are counted as; which vessel it was, older entries do not say. */
export const vesselReads = (vessel: string | undefined): string =>
  vessel === undefined ? 'weight' : `weight ${vessel}`;

/** The instrument that readings of a kind are of. */
export const instrumentOf = (kind: string): { cup: string } | { vessel?: string } => {
  const [, what, name] = /^(cup|weight)(?: (.*))?$/s.exec(kind) ?? [];
  if (what === 'cup') return { cup: name ?? '' };
  return name === undefined ? {} : { vessel: name };
};
