import { once } from 'node:events';
import { copyFileSync, existsSync, readFileSync, rmSync } from 'node:fs';
import { expect, test } from 'vitest';
import { runProgram } from '../../helpers/operating.ts';
import { gullGrey, Phone } from '../../helpers/room/roomServer.ts';
import { runBin } from '../../helpers/runBin.ts';

test('who was forgotten since a backup comes back with it, and is forgotten again by the log', async () => {
  const program = runProgram();
  const { file, child } = program;
  const port = await program.roomPort();
  const [, code = ''] = /#keeper=([\w-]+)/.exec(program.said.join('')) ?? [];
  const [, passcode = ''] = /for joining: (\S+)/.exec(program.said.join('')) ?? [];
  const [odile, wren] = [new Phone(port), new Phone(port)];
  await odile.signIn({ name: 'Odile', secret: 'a bucket of nine eels', code, keeper: true });
  const signed = await wren.signIn({ name: 'Wrenfrith', secret: 'seven grey gulls at sea', passcode });
  expect(signed.status).toBe(200);
  await odile.say(gullGrey);
  await wren.say('/stirred bucket:1 note:"Wrenfrith’s own stir"');

  const backup = `${file}.backup`;
  expect(await runBin('backup', file, { args: [backup] })).toMatchObject({ code: 0 });
  const reply = await wren.say('/forget-me sure:yes');
  expect(reply.json).toMatchObject({ reply: { kind: 'answer' } });
  await expect.poll(() => program.log.join('')).toContain('somebody was forgotten');
  child.kill('SIGTERM');
  await once(child, 'exit');
  const log = program.log.join('');
  expect(log).not.toContain('Wrenfrith');
  expect(readFileSync(file).includes('Wrenfrith')).toBe(false);

  for (const end of ['-wal', '-shm']) if (existsSync(`${file}${end}`)) rmSync(`${file}${end}`);
  copyFileSync(backup, file);
  expect(readFileSync(file).includes('Wrenfrith')).toBe(true);

  // As the journal has it: with its own words before each line.
  const journal = log.replace(/^\{/gm, 'Mar 01 19:00:00 studio npm[812]: {');
  const first = await runBin('forget', file, { input: `Started.\n${journal}` });
  expect(first).toMatchObject({ code: 0, stdout: expect.stringContaining('Forgotten again: 1.') });
  expect(readFileSync(file).includes('Wrenfrith')).toBe(false);
  const second = await runBin('forget', file, { input: journal });
  expect(second).toMatchObject({ code: 0, stdout: expect.stringContaining('Forgotten again: 0.') });
  expect(await runBin('forget', file, { input: 'Started.\n' })).toMatchObject({
    code: 0,
    stdout: expect.stringContaining('nobody'),
  });
});
