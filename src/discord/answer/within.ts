/** What a promise comes to, or undefined when that takes longer. */
export const within = <T>(milliseconds: number, working: Promise<T>): Promise<T | undefined> =>
  new Promise((resolve, reject) => {
    const timer = setTimeout(resolve, milliseconds, undefined);
    working.then(resolve, reject).finally(() => clearTimeout(timer));
  });
