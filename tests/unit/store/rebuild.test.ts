import { spawnSync } from 'node:child_process';
import { existsSync, readFileSync, readdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Sqlite from 'better-sqlite3';
import { describe, expect, it } from 'vitest';
import { streamNo } from '../../../src/studio/ids.ts';
import { checkStates } from '../../../src/store/states/checkStates.ts';
import { gullGrey, loggedAt, water } from '../../helpers/store/storeEvents.ts';
import { openTestStore, storeFile } from '../../helpers/store/storeFile.ts';
import { startWriter } from '../../helpers/store/storeProcess.ts';

const root = fileURLToPath(new URL('../../..', import.meta.url));
const run = (command: 'rebuild' | 'backup', file: string, ...typed: string[]) => {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(root, 'src/run.js'), join(root, `src/bin/${command}.ts`), ...typed],
    { encoding: 'utf8', env: { ...process.env, DATABASE_FILE: file } },
  );
  return { status, stdout, stderr };
};

const twoStudios = async () => {
  const store = await openTestStore();
  const studios = await Promise.all(
    ['1', '2'].map((id) => store.people.studioOf('discord', id, `Studio ${id}`)),
  );
  for (const studio of studios) {
    const ana = await store.people.memberOf(studio, 'discord', '11', 'Ana');
    await store.books.writeOnce(studio, 'fill', async (book) => {
      await book.logStudio({ kind: 'zone', zone: 'America/St_Johns' }, loggedAt(ana, 0));
      await book.open(gullGrey, loggedAt(ana, 0));
      await book.open({ ...gullGrey, name: 'Tern White' }, loggedAt(ana, 0));
      await book.log(streamNo(1), water(450), loggedAt(ana, 10));
      await book.log(streamNo(1), water(300), loggedAt(ana, 5));
      return { keep: true, value: 'filled' };
    });
  }
  await store.close();
  return { file: store.file, studios };
};

const change = (file: string, statement: string, ...values: unknown[]) => {
  const sqlite = new Sqlite(file);
  const { changes } = sqlite.prepare(statement).run(...values);
  sqlite.close();
  expect(changes).toBeGreaterThan(0);
};

describe('rebuild', () => {
  it('finds that every state follows from its entries', async () => {
    const { file } = await twoStudios();
    expect(await checkStates(file)).toEqual({ studios: 2, streams: 6, outdated: 0, differing: [] });
  });

  it.each([
    ['a state is another', `update streams set state = json_set(state, '$.retired', json('true'))`],
    ['a state is gone', 'update streams set state = null'],
    ['a counter is ahead', 'update streams set seq = seq + 1'],
    ['a stream is not counted', 'delete from streams'],
    ['an entry is another', `update events set event = json_set(event, '$.settings.solids', 2.7), seq = 1`],
    ['an entry is missing', 'delete from events'],
  ])('says which stream differs when %s, and puts it right', async (_, statement) => {
    const { file, studios } = await twoStudios();
    const [, second = ''] = studios;
    const where = statement.includes('event') ? ' and seq = 1' : '';
    change(file, `${statement} where studio_id = ? and stream_no = 2${where}`, second);
    expect((await checkStates(file)).differing).toEqual([{ studio: second, stream: 2 }]);
    const store = await openTestStore({ file });
    expect(await store.rebuildStates()).toBeGreaterThan(3);
    expect((await checkStates(file)).differing).toEqual([]);
  });

  it('exits with 1 and names the stream that differs, until it has been run without --check', async () => {
    const { file, studios } = await twoStudios();
    const [, second = ''] = studios;
    change(file, 'update streams set seq = 9 where studio_id = ? and stream_no = 2', second);
    const found = run('rebuild', file, '--check');
    expect(found.status).toBe(1);
    expect(found.stderr).toContain(`Studio ${second}, stream 2:`);
    expect(run('rebuild', file).status).toBe(0);
    expect(run('rebuild', file, '--check')).toMatchObject({ status: 0, stderr: '' });
  });

  it('leaves states of an earlier fold for later, or stores them anew', async () => {
    const { file } = await twoStudios();
    change(file, `update streams set folded_by = 'another', state = '{}' where state is not null`);
    expect(await checkStates(file)).toMatchObject({ outdated: 4, differing: [] });
    const store = await openTestStore({ file });
    await store.rebuildStates();
    expect(await checkStates(file)).toMatchObject({ outdated: 0, differing: [] });
  });

  it('checks beside a running owner, but does not rewrite under it', async () => {
    const file = storeFile();
    const writer = startWriter(file, 'log');
    await writer.line(() => writer.lines.length > 50);
    expect(run('rebuild', file, '--check')).toMatchObject({ status: 0, stderr: '' });
    const refused = run('rebuild', file);
    expect(refused.status).toBe(3);
    expect(refused.stderr).toContain(`Another process owns ${file}`);
    await writer.kill();
  });

  it('says in one sentence that there is no such file, and makes none', () => {
    const file = storeFile();
    const refused = run('rebuild', file, '--check');
    expect(refused.status).toBe(3);
    expect(refused.stderr.trim().split('\n')).toHaveLength(1);
    expect(existsSync(file)).toBe(false);
  });

  it('shows how it is used when it is mistyped', async () => {
    const { file } = await twoStudios();
    const mistyped = run('rebuild', file, '--chekc');
    expect(mistyped.status).toBe(2);
    expect(mistyped.stderr).toContain('rebuild [--check]');
  });
});

describe('backup', () => {
  it('copies everything acknowledged before it, while the owner goes on writing', async () => {
    const file = storeFile();
    const target = `${file}.copy`;
    const writer = startWriter(file, 'log');
    await writer.line(() => writer.lines.length > 100);
    const before = writer.lines.slice(1).map((line) => line.split(' ')[1]);
    expect(run('backup', file, target).status).toBe(0);
    await writer.kill();
    expect(await checkStates(target)).toMatchObject({ studios: 1, differing: [] });
    const copy = await openTestStore({ file: target });
    const studio = await copy.people.studioOf('terminal', 'here', '');
    const entries = await copy.books.read(studio, (book) => book.entries(streamNo(1), { most: 1e6 }));
    const ids: string[] = entries.map(({ id }) => id);
    expect(before.length).toBeGreaterThan(99);
    expect(before.filter((id = '') => !ids.includes(id))).toEqual([]);
  });

  it('names the copy by its time when it is not told a name', async () => {
    const { file } = await twoStudios();
    expect(run('backup', file).status).toBe(0);
    const [name = '', ...others] = readdirSync(join(dirname(file), 'backups'));
    expect(others).toEqual([]);
    expect(name).toMatch(/^\d{8}T\d{6}(Z|[+-]\d{4})-studio\.db$/);
  });

  it('overwrites nothing, and copies nothing that is not a studio’s', async () => {
    const { file } = await twoStudios();
    writeFileSync(`${file}.taken`, 'something else');
    expect(run('backup', file, `${file}.taken`).status).toBe(3);
    expect(readFileSync(`${file}.taken`, 'utf8')).toBe('something else');
    expect(run('backup', `${file}.taken`, `${file}.copy`).status).toBe(3);
    expect(readdirSync(dirname(file)).filter((name) => name.includes('copy'))).toEqual([]);
  });
});
