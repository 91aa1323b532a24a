import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { runSay } from '../helpers/sayProcess.ts';
import { storeFile } from '../helpers/store/storeFile.ts';

const root = fileURLToPath(new URL('../..', import.meta.url));

/** CSI alone and with ESC (ECMA-48), and what turns the direction of the text after it (UAX #9). */
const hostile = 'a\u009b2Jb\u001b[2Jc\u202Egnp';
const acts = /[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202a-\u202e\u2066-\u2069]/;

const withHostileNote = async (): Promise<string> => {
  const file = storeFile();
  const said = await runSay(file, ['--json', '-'], {
    input: `@2026-03-01T12:00:00Z Tove keeper\n/bucket add name:"Gull Grey"\n/stirred bucket:1 note:"${hostile}"\n`,
  });
  expect(said.code).toBe(0);
  return file;
};

const runExport = (file: string, ...args: string[]) =>
  spawnSync(process.execPath, [`${root}src/run.js`, `${root}src/bin/export.ts`, ...args], {
    env: { PATH: process.env['PATH'], DATABASE_FILE: file },
    encoding: 'utf8',
  });

describe('an export', () => {
  it('is written to a file alone, never to a terminal, by whatever name that is given', async () => {
    const file = await withHostileNote();
    for (const out of [
      [],
      ['--out', '/dev/stdout'],
      ['--out', '/dev/fd/1'],
      ['--out', '/dev/stderr'],
      ['--out', ''],
    ]) {
      const { status, stdout, stderr } = runExport(file, ...out);
      expect({ out, status, stdout }).toEqual({ out, status: 2, stdout: '' });
      expect(stderr).not.toMatch(acts);
      expect(stderr).not.toContain('gnp');
    }
  });

  it('holds in its file exactly what was typed', async () => {
    const file = await withHostileNote();
    const out = join(dirname(file), 'all.json');
    const { status, stdout } = runExport(file, '--out', out);
    expect(status).toBe(0);
    expect(stdout).not.toMatch(acts);
    const { entries } = JSON.parse(readFileSync(out, 'utf8')) as { entries: { note?: string }[] };
    expect(entries.map(({ note }) => note)).toContain(hostile);
  });

  it('that a terminal shows as JSON is escaped, and the same once it is read', async () => {
    const file = await withHostileNote();
    const said = await runSay(file, ['--keeper', '--json', '/export as:json']);
    expect(said.stdout).not.toMatch(acts);
    expect(JSON.stringify(said.answers())).toContain('gnp');
  });
});

describe('the name of a file', () => {
  it('that would act on a terminal is not repeated as it is', () => {
    const { status, stderr } = runExport(storeFile(), '--out', `/no/${hostile}/x.json`);
    expect(status).not.toBe(0);
    expect(stderr).not.toMatch(acts);
  });
});
