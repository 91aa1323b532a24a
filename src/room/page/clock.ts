/** The phone's own clock. Unlike `performance.now()` it goes on while the phone sleeps. */
export const phoneNow = (): number => Date.now();

/** How far the server's clock is ahead of this phone's. */
let ahead = 0;
export const setServerTime = (now: number): void => {
  ahead = now - phoneNow();
};
export const serverNow = (): number => phoneNow() + ahead;
