/** Freezes a value that several readers share in memory. */
export const frozen = <T extends object>(value: T): T => {
  if (Object.isFrozen(value)) return value;
  for (const within of Object.values(value))
    if (typeof within === 'object' && within !== null) frozen(within);
  return Object.freeze(value);
};
