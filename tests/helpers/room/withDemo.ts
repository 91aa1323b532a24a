import type { Browser } from 'playwright-core';
import { afterAll, beforeAll } from 'vitest';
import { openBrowser } from './browser.ts';
import { openRoom, type TestRoom } from './roomServer.ts';

/** Opens a browser for the tests of a file, and closes it after them. */
export const withBrowser = (use: (browser: Browser) => void): void => {
  let browser: Browser | undefined;
  beforeAll(async () => {
    browser = await openBrowser();
    use(browser);
  }, 120_000);
  afterAll(() => browser?.close());
};

/** Opens a browser and the demo's room for the tests of a file, and closes both after them. */
export const withDemo = (
  use: (browser: Browser, demo: TestRoom) => void,
  wanted: Parameters<typeof openRoom>[0] = {},
): void => {
  let opened: [Browser, TestRoom] | undefined;
  beforeAll(async () => {
    opened = await Promise.all([openBrowser(), openRoom({ demo: true, ...wanted })]);
    use(...opened);
  }, 120_000);
  afterAll(async () => {
    await opened?.[0].close();
    await opened?.[1].close();
  });
};
