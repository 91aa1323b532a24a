import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type { App } from './app.ts';
import { systemClock } from '../clock.ts';
import { openReminders } from './openReminders.ts';
import type { StudioId } from '../studio/ids.ts';
import { chat } from '../terminal/chat.ts';
import { keepFile } from '../terminal/keepFile.ts';
import { terminalVoice } from '../terminal/terminalVoice.ts';

const historyFile = 'data/chat-history';

const linesBefore = (): string[] => {
  try {
    return readFileSync(historyFile, 'utf8')
      .split('\n')
      .filter((line) => line !== '');
  } catch {
    return [];
  }
};

const keep = (lines: string[]): void => {
  mkdirSync(dirname(historyFile), { recursive: true, mode: 0o700 });
  writeFileSync(historyFile, lines.join('\n'), { mode: 0o600 });
};

/** A conversation should show no log lines except errors. */
const quietLog = { info: () => undefined, warn: () => undefined, error: console.error };

/** Connects this terminal to the desk, as a keeper if the studio says so or the user asks for it. */
export const openChat = async (
  app: App,
  studio: StudioId,
  { as, keeper, files }: { as: string; keeper: boolean; files: string },
): Promise<void> => {
  const { store, desk, words } = app;
  const member = await store.people.memberOf(studio, 'terminal', as, as);
  const now = () => store.books.read(studio, (book) => book.studio());
  const { keepers } = await now();
  await chat({
    desk,
    words,
    who: { studio, member, role: keeper || keepers.includes(member) ? 'keeper' : 'member' },
    now: () => systemClock.now(),
    zone: async () => (await now()).zone,
    keepFile: (file) => keepFile(files, file),
    history: { lines: linesBefore(), keep },
    remind: (show) => openReminders(app, [terminalVoice({ studio, member }, show)], quietLog),
    input: process.stdin,
    output: process.stdout,
  });
};
