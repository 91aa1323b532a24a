/** The small scale of a window, on the wall and on labels: beside the window there is room for readings outside it. */
export const windowScale = ({ low, high }: { low: number; high: number }) => {
  const span = high - low;
  const from = low - span * 1.25;
  /** Where a value lies, from 0 to 1. */
  return (value: number): number => (value - from) / (span * 3.5);
};
