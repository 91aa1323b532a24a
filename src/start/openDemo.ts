import { existsSync, renameSync, rmSync } from 'node:fs';
import { openApp, type App, type AppOptions } from './app.ts';
import { loadSeed } from '../seed/loadSeed.ts';
import { playSeed } from './playSeed.ts';

/** The demo's own file; its data enters no other. */
export const demoFile = 'data/demo.db';

/** Who somebody trying it out is, until they say otherwise. */
export const demoKeeper = 'Odile';

/** Fills a file beside it first: a demo that was cut short is never taken for a whole one. */
const fill = async (options: AppOptions): Promise<void> => {
  const half = `${options.file}.${process.pid}.new`;
  const drop = (...ends: string[]) => ends.forEach((end) => rmSync(`${half}${end}`, { force: true }));
  try {
    const app = await openApp({ ...options, file: half });
    try {
      await playSeed(loadSeed(), app, options.clock.now());
    } finally {
      await app.store.close();
    }
    if (!existsSync(options.file)) renameSync(half, options.file);
  } finally {
    drop('', '-wal', '-shm', '.lock');
  }
};

/** Opens the demo studio; a file that is not there is filled first, with times that end at this first start. */
export const openDemo = async (options: AppOptions): Promise<App> => {
  if (!existsSync(options.file)) await fill(options);
  return openApp(options);
};
