import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import Sqlite from 'better-sqlite3';
import { describe, expect, it, onTestFinished } from 'vitest';
import { exportSchema } from '../helpers/store/exportSchema.ts';
import { standsIn } from '../helpers/store/fileBytes.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));
const program = (name: string) => [join(root, 'src/run.js'), join(root, 'src/bin', `${name}.ts`)];
const setting = (file: string) => ({
  cwd: dirname(file),
  env: { PATH: process.env['PATH'] ?? '', TZ: 'UTC', DATABASE_FILE: file },
});
const run = (name: string, file: string, ...args: string[]) =>
  spawnSync(process.execPath, [...program(name), ...args], { ...setting(file), encoding: 'utf8' });

const gullGrey = '/bucket add name:"Gull Grey" nick:gg pail:19l volume:15l gravity:1.42-1.46';

const studioFile = (): string => {
  const folder = mkdtempSync(join(tmpdir(), 'data-'));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  const file = join(folder, 'studio.db');
  expect(
    run('say', file, '--as', 'Tove', '--keeper', gullGrey, '/stirred bucket:gg note:"=1+1"').status,
  ).toBe(0);
  return file;
};

describe('a reply’s file at the terminal', () => {
  it('is kept in the folder that was named, for nobody else to read, and never over another', () => {
    const file = studioFile();
    const folder = join(dirname(file), 'kept');
    for (const n of [1, 2]) {
      const { stdout, status } = run('say', file, '--keeper', '--files', folder, '/export as:csv');
      expect(status).toBe(0);
      expect(stdout).toContain(`its file is saved as ${folder}/glaze-room-`);
      expect(readdirSync(folder)).toHaveLength(n);
    }
    for (const name of readdirSync(folder)) {
      expect(statSync(join(folder, name)).mode & 0o777).toBe(0o600);
      expect(readFileSync(join(folder, name), 'utf8')).toContain("'=1+1");
    }
  });

  it('is a PDF of labels too, byte for byte the one that the reply holds', () => {
    const file = studioFile();
    const folder = join(dirname(file), 'labels');
    const line = '/bucket labels code:no';
    const { stdout } = run('say', file, '--keeper', '--json', '--files', folder, line);
    const { file: sent } = JSON.parse(stdout) as { file: { name: string; content: string } };
    expect(readdirSync(folder)).toEqual(['labels-a4.pdf']);
    expect(readFileSync(join(folder, 'labels-a4.pdf'), 'latin1')).toBe(sent.content);
    expect(sent.content).toMatch(/^%PDF-1\.7\n[^]*%%EOF\n$/);
  });

  it('is spoken of when no folder was named, and whole in the JSON either way', () => {
    const file = studioFile();
    const told = run('say', file, '--keeper', '/export');
    expect(told.stdout).toContain('--files FOLDER');
    const { stdout } = run('say', file, '--keeper', '--json', '/export');
    const { file: sent, ok } = JSON.parse(stdout) as { ok: boolean; file: { content: string } };
    expect(ok).toBe(true);
    expect(exportSchema.parse(JSON.parse(sent.content)).entries.length).toBe(2);
    expect(readdirSync(dirname(file)).filter((name) => name.startsWith('glaze'))).toEqual([]);
  });
});

describe('npm run export', () => {
  it('writes everything beside a running owner, and over nothing', async () => {
    const file = studioFile();
    const owner = spawn(process.execPath, [...program('say'), '-'], {
      ...setting(file),
      stdio: ['pipe', 'pipe', 'ignore'],
    });
    const answered = once(owner.stdout, 'data');
    owner.stdin.write('/stirred bucket:gg minutes:2\n');
    await answered;
    const out = join(dirname(file), 'all.json');
    const { status, stdout } = run('export', file, '--out', out);
    expect(status).toBe(0);
    expect(stdout).toContain('3 entries');
    expect(exportSchema.parse(JSON.parse(readFileSync(out, 'utf8'))).entries.length).toBe(3);
    expect(statSync(out).mode & 0o777).toBe(0o600);
    expect(run('export', file, '--out', out)).toMatchObject({ status: 2 });
    owner.stdin.end();
    await once(owner, 'close');
  });

  it('narrows as the command does, and says in one line what is mistyped', () => {
    const file = studioFile();
    const out = join(dirname(file), 'gg.csv');
    const { status, stdout } = run(
      'export',
      file,
      '--out',
      out,
      '--as',
      'csv',
      '--bucket',
      'gg',
      '--days',
      '1',
    );
    expect([status, stdout]).toEqual([0, expect.stringContaining('1 entry')]);
    expect(readFileSync(out, 'utf8').split('\r\n')).toHaveLength(3);
    for (const wrong of [
      [],
      ['--out', 'x', '--as', 'xml'],
      ['--out', 'x', '--bucket', 'zz'],
      ['--out', 'x', '--days', 'two'],
      ['--out', 'x', '--studio', 'none'],
    ])
      expect(run('export', file, ...wrong).status, wrong.join(' ')).toBe(2);
    const nowhere = run('export', file, '--out', join(dirname(file), 'no', 'such', 'x.json'));
    expect(nowhere.status).toBe(2);
    expect(nowhere.stderr.trim().split('\n')).toEqual([expect.stringContaining('there is no folder for')]);
    expect(run('export', `${file}.none`, '--out', 'x').status).toBe(3);
    expect(readdirSync(dirname(file))).not.toContain('x');
  });
});

describe('a program that is ended as it forgets', () => {
  it('has forgotten after its next start, once it had said so', async () => {
    for (let round = 0; round < 4; round += 1) {
      const file = studioFile();
      const said = run(
        'say',
        file,
        '--as',
        'Quillfeather',
        '/stirred bucket:gg note:"my xylophone"',
        '/bucket log bucket:gg',
      );
      expect(said.status).toBe(0);
      const child = spawn(
        process.execPath,
        [...program('say'), '--as', 'Quillfeather', '/forget-me sure:yes'],
        setting(file),
      );
      const ended = once(child, 'close');
      await once(child.stdout, 'data');
      child.kill('SIGKILL');
      await ended;
      expect(run('say', file, '--as', 'Tove', '/bucket list').status).toBe(0);
      for (const word of ['Quillfeather', 'xylophone']) expect(standsIn(file, word), word).toBe(false);
      const sqlite = new Sqlite(file, { readonly: true });
      expect(sqlite.prepare('select count(*) from erasures').pluck().get()).toBe(0);
      sqlite.close();
      expect(run('rebuild', file, '--check').status).toBe(0);
    }
  });
});
