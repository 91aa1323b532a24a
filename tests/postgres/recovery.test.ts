import { randomUUID } from 'node:crypto';
import {
  appendFileSync,
  chmodSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { expect, onTestFinished, test } from 'vitest';
import type { Reply } from '../../src/contract/contract.ts';
import type { Log } from '../../src/contract/log.ts';
import { speak } from '../../src/desk/speak.ts';
import { openApp, type App } from '../../src/start/app.ts';
import { chosenStudio } from '../../src/start/chosenStudio.ts';
import { logForgotten } from '../../src/start/logForgotten.ts';
import { systemClock } from '../../src/clock.ts';
import type { Role, StudioId } from '../../src/studio/ids.ts';
import { queryAt } from '../helpers/postgres/databases.ts';
import { startPostgres } from '../helpers/postgres/server.ts';
import { runBin } from '../helpers/runBin.ts';

/** A server that archives its write-ahead log, with a logbook. */
const openArchiving = async () => {
  const server = await startPostgres();
  onTestFinished(() => server.stop());
  const archive = mkdtempSync(join(tmpdir(), 'glaze-archive-'));
  chmodSync(archive, 0o777);
  onTestFinished(() => rmSync(archive, { recursive: true, force: true }));
  const postgres = server.address('postgres');
  await queryAt(postgres, 'create database studio');
  await queryAt(postgres, "alter system set archive_mode = 'on'");
  await queryAt(
    postgres,
    `alter system set archive_command = 'test ! -f ${archive}/%f && cp %p ${archive}/%f'`,
  );
  await server.restart();
  return { server, archive, address: server.address('studio') };
};

/** What pg_basebackup does, which the npm package of the server leaves out. */
const baseBackup = async (address: string, to: string): Promise<void> => {
  const client = new pg.Client(address);
  client.on('error', () => undefined);
  await client.connect();
  const [at] = (await client.query<{ data_directory: string }>('show data_directory')).rows;
  await client.query("select pg_backup_start('base', fast => true)");
  // As the server's own user, whom alone its files are open to.
  await client.query(`copy (select 1) to program 'cp -Rp ${at?.data_directory} ${to}'`);
  await client.query(`copy (select 1) to program 'rm -rf ${to}/postmaster.pid ${to}/pg_wal/*'`);
  const [label] = (await client.query<{ labelfile: string }>('select labelfile from pg_backup_stop()')).rows;
  await client.end();
  writeFileSync(join(to, 'backup_label'), label?.labelfile ?? '');
  chmodSync(join(to, 'backup_label'), 0o666);
};

const archived = async (address: string): Promise<void> => {
  const [last] = await queryAt(address, 'select pg_walfile_name(pg_switch_wal()) as name');
  const there = async () =>
    (
      await queryAt(address, 'select last_archived_wal >= $1 as there from pg_stat_archiver', [
        last?.['name'],
      ])
    )[0];
  await expect.poll(there).toEqual({ there: true });
};

const holds = (folder: string, word: string): boolean =>
  readdirSync(folder).some((name) => readFileSync(join(folder, name)).includes(word));

const inApp = async <T>(address: string, work: (app: App, studio: StudioId) => Promise<T>): Promise<T> => {
  const app = await openApp({ file: address, clock: systemClock, onBug: console.error });
  try {
    return await work(app, await chosenStudio(app, undefined));
  } finally {
    await app.store.erased();
    await app.store.close();
  }
};

/** Says a line as a keeper or a member would at a terminal. */
const say = (address: string, name: string, line: string, role: Role = 'member'): Promise<Reply> =>
  inApp(address, async (app, studio) => {
    const member = await app.store.people.memberOf(studio, 'terminal', name, name);
    const reply = await speak(line, randomUUID(), { studio, member, role, now: systemClock.now() }, app);
    expect(reply).toMatchObject({ kind: 'answer' });
    return reply;
  });

const logOf = async (address: string): Promise<unknown> =>
  (await say(address, 'Odile', '/bucket log bucket:1')).data['entries'];

/** Somebody is forgotten by a running bot; returns its log. */
const forgetIn = (address: string, name: string): Promise<string> =>
  inApp(address, async (app, studio) => {
    let logged = '';
    const info: Log['info'] = (found, msg) => void (logged += `${JSON.stringify({ ...found, msg })}\n`);
    logForgotten(app.store, { info, warn: info, error: info });
    const member = await app.store.people.memberOf(studio, 'terminal', name, name);
    const who = { studio, member, role: 'member', now: systemClock.now() } as const;
    expect(await speak('/forget-me sure:yes', randomUUID(), who, app)).toMatchObject({ kind: 'answer' });
    return logged;
  });

const namesIn = async (address: string): Promise<unknown[]> =>
  (await queryAt(address, 'select name from members')).map(({ name }) => name);

test.skipIf(process.platform === 'win32')(
  'a database recovered to a moment has every entry until then, none after, and people to forget again',
  async () => {
    const { server, archive, address } = await openArchiving();
    await say(
      address,
      'Odile',
      '/bucket add name:"Gull Grey" pail:19l volume:15l gravity:1.42-1.46 seconds:12-16 cup:ford4',
      'keeper',
    );
    await say(address, 'Ternwick', '/reading bucket:1 gravity:1.44 seconds:14 stirred:yes note:"Ternwick’s"');
    await say(address, 'Ploverdale', '/stirred bucket:1');
    const base = mkdtempSync(join(tmpdir(), 'glaze-base-'));
    chmodSync(base, 0o777);
    onTestFinished(() => rmSync(base, { recursive: true, force: true }));
    await baseBackup(address, join(base, 'data'));

    await forgetIn(address, 'Ploverdale');
    await say(address, 'Odile', '/stirred bucket:1');
    const before = await logOf(address);
    const [target] = await queryAt(address, 'select clock_timestamp()::text as at');
    await say(address, 'Odile', '/added bucket:1 what:water amount:4l');
    const log = await forgetIn(address, 'Ternwick');
    expect(await namesIn(address)).toEqual(['Odile']);
    await archived(address);
    expect(holds(archive, 'Ternwick')).toBe(true);

    await server.restart((data) => {
      renameSync(data, `${data}-broken`);
      renameSync(join(base, 'data'), data);
      writeFileSync(join(data, 'recovery.signal'), '');
      const settings = [
        `restore_command = 'cp ${archive}/%f %p'`,
        `recovery_target_time = '${String(target?.['at'])}'`,
        "recovery_target_action = 'promote'",
        'archive_mode = off',
      ];
      appendFileSync(join(data, 'postgresql.auto.conf'), `${settings.join('\n')}\n`);
    });

    expect(await runBin('rebuild', address, { args: ['--check'] })).toMatchObject({
      code: 0,
      stdout: expect.stringContaining('every state follows from its entries'),
    });
    expect(await logOf(address)).toEqual(before);
    expect((await namesIn(address)).sort()).toEqual(['Odile', 'Ternwick']);

    expect(await runBin('forget', address, { input: log })).toMatchObject({
      code: 0,
      stdout: expect.stringContaining('Forgotten again: 1.'),
    });
    expect(await namesIn(address)).toEqual(['Odile']);
    expect(await queryAt(address, 'select note from notes')).toEqual([]);
  },
);
