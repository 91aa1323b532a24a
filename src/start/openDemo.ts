import { existsSync, renameSync, rmSync } from 'node:fs';
import { openApp, type App, type AppOptions } from './app.ts';
import { loadSeed } from '../seed/loadSeed.ts';
import { playSeed } from './playSeed.ts';

/** The demo's own file. The demo data goes into no other. */
export const demoFile = 'data/demo.db';

/** The demo user's name until they choose one. */
export const demoKeeper = 'Odile';

/** Fills a temporary file first, so that an interrupted start leaves no half-filled demo. */
const fillDemo = async (options: AppOptions): Promise<void> => {
  const half = `${options.file}.${process.pid}.new`;
  const drop = (...ends: string[]) => ends.forEach((end) => rmSync(`${half}${end}`, { force: true }));
  try {
    const app = await openApp({ ...options, file: half });
    try {
      await playSeed(loadSeed(), app, app.clock.now());
    } finally {
      await app.store.close();
    }
    if (!existsSync(options.file)) renameSync(half, options.file);
  } finally {
    drop('', '-wal', '-shm', '.lock');
  }
};

/** Opens the demo studio. If its file is missing, it is filled, with times that end now. */
export const openDemo = async (options: AppOptions): Promise<App> => {
  if (!existsSync(options.file)) await fillDemo(options);
  return openApp(options);
};
