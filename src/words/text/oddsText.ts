/** A chance as people say it: “8 in 10”. Finer near certainty, where it matters. */
export const oddsText = (chance: number): string => {
  if (chance > 0.99) return 'more than 99 in 100';
  if (chance >= 0.895) return `${Math.floor(100 * chance)} in 100`;
  return chance < 0.05 ? 'less than 1 in 20' : `${Math.round(10 * chance)} in 10`;
};
