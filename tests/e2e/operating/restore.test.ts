import { execFileSync } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, mkdirSync, readdirSync, renameSync, copyFileSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { expect, test } from 'vitest';
import { runProgram, type Program } from '../../helpers/operating.ts';
import { gullGrey, Phone } from '../../helpers/room/roomServer.ts';
import { runSay } from '../../helpers/sayProcess.ts';

const root = fileURLToPath(new URL('../../..', import.meta.url));

/** Runs one of the operator’s programs on a file. */
const operate = (file: string, program: string, ...args: string[]): string =>
  execFileSync(process.execPath, [`${root}src/run.js`, `${root}src/bin/${program}.ts`, ...args], {
    env: { PATH: process.env['PATH'], DATABASE_FILE: file },
    encoding: 'utf8',
  });

const keeperIn = async (program: Program): Promise<Phone> => {
  const phone = new Phone(await program.roomPort());
  const [, code = ''] = /#keeper=([\w-]+)/.exec(program.said.join('')) ?? [];
  const signed = await phone.signIn({ name: 'Odile', secret: 'a bucket of nine eels', code, keeper: true });
  expect(signed.status).toBe(200);
  return phone;
};

const log = async (file: string): Promise<unknown[]> => {
  const said = await runSay(file, ['--keeper', '--json', '/bucket log bucket:1']);
  const [answer] = said.answers();
  return answer?.data['entries'] as unknown[];
};

test('a copy that was made while the bot ran comes back after a kill, exactly, with what was logged until then', async () => {
  const program = runProgram();
  const { file, child } = program;
  const phone = await keeperIn(program);
  await phone.say(gullGrey);
  await phone.say('/reading bucket:1 gravity:1.44 seconds:14 stirred:yes');
  operate(file, 'backup');
  const [copy = ''] = readdirSync(join(dirname(file), 'backups')).filter((name) =>
    name.endsWith(basename(file)),
  );
  for (let n = 0; n < 5; n += 1) expect((await phone.say('/stirred bucket:1')).status).toBe(200);
  child.kill('SIGKILL');
  await once(child, 'exit');
  // What is still to be written into the file stands beside it, and must not get into the restored one.
  expect(existsSync(`${file}-wal`)).toBe(true);

  const broken = join(dirname(file), 'broken');
  mkdirSync(broken);
  for (const end of ['', '-wal', '-shm'])
    if (existsSync(`${file}${end}`)) renameSync(`${file}${end}`, join(broken, `${basename(file)}${end}`));
  copyFileSync(join(dirname(file), 'backups', copy), file);

  expect(operate(file, 'rebuild', '--check')).toMatch(/every state follows from its entries/);
  expect(await log(file)).toHaveLength(2);
  // The file that was put aside is whole as well: nothing that was answered is lost by a kill.
  expect(await log(join(broken, basename(file)))).toHaveLength(7);

  // The same people sign in with the same passwords.
  const again = runProgram({}, file);
  const back = new Phone(await again.roomPort());
  const signed = await back.signIn({ name: 'Odile', secret: 'a bucket of nine eels' });
  expect(signed.status).toBe(200);
});
