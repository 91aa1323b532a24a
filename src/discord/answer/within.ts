/** A promise's value, or undefined if it takes longer than that. */
export const within = <T>(milliseconds: number, working: Promise<T>): Promise<T | undefined> =>
  new Promise((resolve, reject) => {
    const timer = setTimeout(resolve, milliseconds, undefined);
    working.then(resolve, reject).finally(() => clearTimeout(timer));
  });
