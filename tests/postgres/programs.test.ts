import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { newDatabase, queryAt } from '../helpers/postgres/databases.ts';
import { storeFile } from '../helpers/store/storeFile.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const run = (program: string, env: Record<string, string>, ...typed: string[]) => {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(root, 'src/run.js'), join(root, `src/bin/${program}.ts`), ...typed],
    { encoding: 'utf8', env: { PATH: process.env['PATH'], TZ: 'UTC', ...env } },
  );
  return { status, stdout, stderr };
};

describe('the programs on a database', () => {
  it('log, check, export and import there', async () => {
    const DATABASE_URL = await newDatabase();
    const add =
      '/bucket add name:"Gull Grey" pail:19l volume:15l gravity:1.42-1.46 solids:2.6 rest:4h mesh:80';
    expect(run('say', { DATABASE_URL }, '--keeper', add)).toMatchObject({ status: 0, stderr: '' });
    expect(run('say', { DATABASE_URL }, '/stirred bucket:1').stdout).toContain('Gull Grey');
    expect(run('rebuild', { DATABASE_URL }, '--check')).toMatchObject({ status: 0, stderr: '' });
    expect(run('rebuild', { DATABASE_URL }).status).toBe(0);
    const out = join(dirname(storeFile()), 'all.json');
    expect(run('export', { DATABASE_URL }, '--out', out)).toMatchObject({ status: 0, stderr: '' });
    expect(readFileSync(out, 'utf8')).toContain('Gull Grey');
    expect(run('import', { DATABASE_URL }, out, '--studio', 'Second')).toMatchObject({ status: 0 });
    const studios = await queryAt(DATABASE_URL, 'select name from studios order by created_at');
    expect(studios.map(({ name }) => name)).toContain('Second');
  });

  it('say in one sentence what they don’t do there, or what is wrong with its address', async () => {
    const DATABASE_URL = await newDatabase();
    const refused = (program: string, env: Record<string, string>, ...typed: string[]) => {
      const { status, stderr } = run(program, env, ...typed);
      expect(stderr.trim().split('\n')).toHaveLength(1);
      expect(stderr).not.toContain('glaze@');
      return { status, stderr };
    };
    expect(refused('backup', { DATABASE_URL })).toMatchObject({ status: 2 });
    expect(refused('backup', { DATABASE_URL }).stderr).toContain('pg_dump');
    expect(refused('seed', {}, DATABASE_URL).status).toBe(2);
    expect(refused('say', { DATABASE_URL, DATABASE_FILE: storeFile() }, '/help').stderr).toContain(
      'DATABASE_FILE',
    );
    expect(refused('say', { DATABASE_URL: 'mysql://root:glaze@x/y' }, '/help').status).toBe(2);
    const nobody = DATABASE_URL.replace(/:\d+\//, ':1/');
    expect(refused('say', { DATABASE_URL: nobody }, '/help').stderr).toContain('cannot be reached');
  });
});
