/** The phone's clock. Unlike `performance.now()`, it continues while the phone sleeps. */
export const phoneNow = (): number => Date.now();

/** Server time minus phone time, in milliseconds. */
let ahead = 0;
export const setServerTime = (now: number): void => {
  ahead = now - phoneNow();
};
export const serverNow = (): number => phoneNow() + ahead;
