import { existsSync } from 'node:fs';
import { AxeBuilder } from '@axe-core/playwright';
import chromium from '@sparticuz/chromium';
import { chromium as playwright, type Browser, type BrowserContextOptions, type Page } from 'playwright-core';

const systemBrowsers = ['/usr/bin/chromium', '/usr/bin/chromium-browser', '/usr/bin/google-chrome'];

/** Switches of the packaged browser that would disable the security that the tests check. */
const weakening = ['--disable-web-security', '--allow-running-insecure-content', '--single-process'];

/** This machine's browser if there is one, otherwise the packaged one. */
export const openBrowser = async (): Promise<Browser> => {
  const installed = systemBrowsers.find((path) => existsSync(path));
  if (installed !== undefined) return playwright.launch({ executablePath: installed, headless: true });
  return playwright.launch({
    executablePath: await chromium.executablePath(),
    args: chromium.args.filter((arg) => !weakening.includes(arg)),
    headless: true,
  });
};

export const phoneSize: BrowserContextOptions = {
  viewport: { width: 390, height: 844 },
  hasTouch: true,
  isMobile: true,
};

/** A page in its own browser context, with its console errors collected. */
export const openPage = async (
  browser: Browser,
  options: BrowserContextOptions = phoneSize,
): Promise<{ page: Page; complaints: string[] }> => {
  const context = await browser.newContext(options);
  const page = await context.newPage();
  const complaints: string[] = [];
  page.on('console', (message) => {
    if (['error', 'warning'].includes(message.type())) complaints.push(message.text());
  });
  page.on('pageerror', (error) => complaints.push(String(error.stack)));
  return { page, complaints };
};

/** axe's findings, by rule and element. */
export const axeFindings = async (page: Page): Promise<string[]> => {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations.flatMap(({ id, nodes }) =>
    nodes.map(({ target, failureSummary }) => `${id} at ${target.join(' ')}: ${failureSummary ?? ''}`),
  );
};

/** Whether the page overflows sideways, so that readers must scroll. */
export const sticksOut = (page: Page): Promise<number> =>
  page.evaluate<number>('document.documentElement.scrollWidth - document.documentElement.clientWidth');
