import { chmodSync, mkdirSync, mkdtempSync, readdirSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { describe, expect, it, onTestFinished } from 'vitest';
import { openForReading } from '../../src/store/engine/sqlite/database.ts';
import { makeFolder } from '../../src/store/engine/sqlite/makeFolder.ts';
import { migrations } from '../../src/store/migrations/migrations.ts';
import { openStore } from '../../src/store/openStore.ts';
import { vacuumInto } from '../../src/store/engine/sqlite/vacuumInto.ts';
import { keepFile } from '../../src/terminal/keepFile.ts';
import { settableClock } from '../helpers/store/storeFile.ts';

const clock = settableClock();
const rights = (path: string): string => (statSync(path).mode & 0o777).toString(8);

const place = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'rights-'));
  onTestFinished(() => rmSync(folder, { recursive: true }));
  chmodSync(folder, 0o755);
  return folder;
};

/** The files in a folder that every user of the machine may read. */
const open = (folder: string) =>
  readdirSync(folder).filter((name) => rights(join(folder, name)).slice(1) !== '00');

describe('what the studio keeps', () => {
  it('is for its owner alone: the file, what stands beside it, its copies', async () => {
    const folder = place();
    const file = join(folder, 'data', 'studio.db');
    const older = await openStore(file, { clock, migrations: migrations.slice(0, -1) });
    await older.close();
    const store = await openStore(file, { clock });
    onTestFinished(() => store.close());
    await store.people.studioOf('terminal', 'here', 'Elsewhere');
    makeFolder(join(folder, 'data', 'backups'));
    const { sqlite } = openForReading(file);
    vacuumInto(sqlite, join(folder, 'data', 'backups', 'copy.db'));
    sqlite.close();
    const beside = readdirSync(join(folder, 'data'));
    expect(beside).toEqual(
      expect.arrayContaining([
        'backups',
        'studio.db',
        'studio.db-wal',
        `studio.db.before-${migrations.length}`,
      ]),
    );
    expect(open(join(folder, 'data'))).toEqual([]);
    expect(open(join(folder, 'data', 'backups'))).toEqual([]);
    expect(rights(join(folder, 'data'))).toBe('700');
    // The folder was there before, so its permissions are not ours to change.
    expect(rights(folder)).toBe('755');
  });

  it('is taken from others when an earlier release left it open to them', async () => {
    const folder = place();
    const file = join(folder, 'studio.db');
    const first = await openStore(file, { clock });
    await first.close();
    chmodSync(file, 0o644);
    const store = await openStore(file, { clock });
    onTestFinished(() => store.close());
    expect(open(folder)).toEqual([]);
    expect(rights(folder)).toBe('755');
  });

  it('leaves the file of another program as it was', async () => {
    const folder = place();
    const file = join(folder, 'other.db');
    writeFileSync(file, 'not a database at all, but long enough to be looked into'.repeat(20), {
      mode: 0o644,
    });
    await expect(openStore(file, { clock })).rejects.toMatchObject({ kind: 'corrupt' });
    expect(rights(file)).toBe('644');
  });

  it('goes into folders for the owner alone, and leaves one that was there as it was', () => {
    const folder = place();
    const files = join(folder, 'files');
    const sheet = { name: 'batch.html', type: 'text/html', content: 'a sheet' } as const;
    expect(rights(keepFile(files, sheet))).toBe('600');
    expect(rights(files)).toBe('700');
    const there = join(folder, 'there');
    mkdirSync(there, { mode: 0o755 });
    keepFile(there, sheet);
    expect(rights(there)).toBe('755');
  });
});
