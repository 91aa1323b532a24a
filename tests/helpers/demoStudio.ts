import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openDemo } from '../../src/start/openDemo.ts';
import { instant } from '../../src/studio/ids.ts';

/** The demo studio, first started at a fixed instant, in a file that is deleted afterwards. */
export const demoStudio = async (at: string) => {
  const now = instant(Date.parse(at));
  const folder = mkdtempSync(join(tmpdir(), 'demo-'));
  const app = await openDemo({
    file: join(folder, 'demo.db'),
    clock: { now: () => now },
    onBug: (error) => {
      throw error;
    },
  });
  const [studio] = await app.store.people.studios();
  if (!studio) throw new Error('the demo file holds no studio');
  const as = async (name: string, role: 'member' | 'keeper' = 'member') => ({
    studio: studio.id,
    member: await app.store.people.memberOf(studio.id, 'terminal', name, name),
    role,
  });
  const close = async () => {
    await app.store.close();
    rmSync(folder, { recursive: true });
  };
  return { app, studio: studio.id, now, as, close };
};
