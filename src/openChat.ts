import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';
import type { App } from './app.ts';
import { systemClock } from './clock.ts';
import type { StudioId } from './studio/ids.ts';
import { chat } from './terminal/chat.ts';

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
  mkdirSync(dirname(historyFile), { recursive: true });
  writeFileSync(historyFile, lines.join('\n'), { mode: 0o600 });
};

/** Lets whoever sits at this terminal talk to the desk; a keeper of the studio, or one who says so, as a keeper. */
export const openChat = async (
  { store, desk, words }: App,
  studio: StudioId,
  { as, keeper }: { as: string; keeper: boolean },
): Promise<void> => {
  const member = await store.people.memberOf(studio, 'terminal', as, as);
  const now = () => store.books.read(studio, (book) => book.studio());
  const { keepers } = await now();
  await chat({
    desk,
    words,
    who: { studio, member, role: keeper || keepers.includes(member) ? 'keeper' : 'member' },
    now: () => systemClock.now(),
    zone: async () => (await now()).zone,
    history: { lines: linesBefore(), keep },
    input: process.stdin,
    output: process.stdout,
  });
};
