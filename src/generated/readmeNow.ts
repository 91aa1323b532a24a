import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { speak } from '../desk/speak.ts';
import { openDemo } from '../start/openDemo.ts';
import { instant } from '../studio/ids.ts';
import { replyLines } from '../terminal/plainReply.ts';
import { renewReadme } from './renewReadme.ts';

/** When the README's sessions take place: 19:30 on a Wednesday at the demo studio (2026-05-20T22:00Z). */
const evening = instant(1_779_314_400_000);
const columns = 72;

/** The README as it should read today, its sessions typed by a member of a fresh demo studio. */
export const readmeNow = async (readme: string): Promise<string> => {
  const folder = mkdtempSync(join(tmpdir(), 'readme-'));
  const app = await openDemo({
    file: join(folder, 'demo.db'),
    clock: { now: () => evening },
    onBug: (error) => {
      throw error;
    },
  });
  try {
    const [studio] = await app.store.people.studios();
    if (!studio) throw new Error('the demo has no studio');
    const member = await app.store.people.memberOf(studio.id, 'terminal', 'Wren', 'Wren');
    const { zone } = await app.store.books.read(studio.id, (book) => book.studio());
    let lines = 0;
    const answer = async (line: string) => {
      const who = { studio: studio.id, member, role: 'member', now: evening } as const;
      const reply = await speak(line, `readme:${lines++}`, who, app);
      return replyLines(reply, { now: evening, zone }, columns);
    };
    return await renewReadme(readme, { commands: app.desk.commands, words: app.words, answer });
  } finally {
    await app.store.close();
    rmSync(folder, { recursive: true });
  }
};
