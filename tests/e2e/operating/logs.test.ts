import { setTimeout as sleep } from 'node:timers/promises';
import Sqlite from 'better-sqlite3';
import { expect, test } from 'vitest';
import { systemClock } from '../../../src/clock.ts';
import { openStore } from '../../../src/store/openStore.ts';
import { DiscordDouble, serverError } from '../../helpers/discord/discordDouble.ts';
import { slash, submit, typing } from '../../helpers/discord/discordInteraction.ts';
import { runProgram } from '../../helpers/operating.ts';
import { Phone } from '../../helpers/room/roomServer.ts';
import { storeFile } from '../../helpers/store/storeFile.ts';

const token = '9f4c1f0a7d3be58266d10c7ab94e3f5d8e21a6bb703c95f4d2e8170c6a5b39ef';

/** What people type, in every place where they can; each contains a word that must not be in the log. */
const names = ['Zephyrine', 'Quillon'];
const password = 'nine marmalade eels';
const typed = 'vermilionyak';

const lines = [
  `/bucket add name:"${typed} blue" nick:${typed} gravity:1.42-1.46`,
  `/reading bucket:${typed} gravity:1.44 seconds:14 stirred:yes note:"${typed} said so"`,
  `/reading bucket:${typed} gravity:${typed}`,
  `/nosuch ${typed}`,
  `${typed} 1.46 13 sec stirred`,
  `/ask question:"why is ${typed} crawling"`,
  `${typed} is on fire`,
  `/note add title:"${typed}" text:"${typed} and more"`,
  `/coat on kind:wax pieces:"${typed}"`,
  `/studio material name:"${typed}"`,
  `/studio vessel name:"${typed}" tare:85.4g water:100.2g`,
  `/batch plan recipe:"${typed} 50, silica 50" gravity:1.44 volume:5l`,
  `/redact name:${typed}`,
  `/link code:${typed}`,
  `/export`,
  `/undo entry:${typed}`,
];

/** Makes every entry fail, as a broken disk would. */
const breakEntries = (file: string): (() => void) => {
  const run = (sql: string) => {
    const database = new Sqlite(file);
    database.exec(sql);
    database.close();
  };
  run("create trigger broken before insert on events begin select raise(abort, 'broken on purpose'); end");
  return () => run('drop trigger broken');
};

test('the log, at its most talkative, holds nobody’s words and no secret, whatever goes wrong', async () => {
  const discord = await DiscordDouble.start();
  const file = storeFile();
  const before = await openStore(file, { clock: systemClock });
  await before.people.studioOf('discord', discord.world.guildId, 'Wrackline Clay Co-op');
  await before.close();
  const env = {
    DISCORD_TOKEN: discord.token,
    DISCORD_API: discord.api,
    LOG_LEVEL: 'debug',
    MONITOR_TOKEN: token,
  };
  const program = runProgram(env, file);
  await program.roomPort();
  await discord.until(() => discord.gateway.connected, 'the bot to connect', 20_000);

  // The room: a keeper, a member, a stranger, and what none of them should send.
  const printed = program.said.join('');
  const [, keeperCode = ''] = /#keeper=([\w-]+)/.exec(printed) ?? [];
  const [, passcode = ''] = /joining: (\S+)/.exec(printed) ?? [];
  const phone = new Phone(await program.roomPort());
  await phone.signIn({ name: names[0], secret: password, code: keeperCode, keeper: true });
  const member = new Phone(await program.roomPort());
  await member.signIn({ name: names[1], secret: `${password} too`, passcode });
  await new Phone(await program.roomPort()).signIn({
    name: names[0],
    secret: `${typed} guessed`,
    passcode: typed,
  });
  for (const one of [phone, member]) for (const line of lines) await one.say(line);
  await phone.post('/api/say', `{"id":"${typed}","line":"${typed}`);
  await phone.post('/api/say', { id: typed, line: typed.repeat(2_000) });
  await phone.get(`/api/post/${typed}/file?${typed}=1`, { 'x-forwarded-for': typed });
  await phone.post('/api/suggest', { path: [typed], typed: { [typed]: typed }, option: typed });
  await phone.post('/api/complete', { line: `/${typed}` });
  const repair = breakEntries(file);
  for (const one of [phone, member]) for (const line of lines) await one.say(line);

  // Discord: answered, refused, cut and broken.
  const channel = discord.channel();
  const keeper = { by: discord.person(names[0] ?? '', { manages: true }), channel };
  const broken = await discord.reply(slash(keeper, ['bucket', 'add'], { name: `${typed} grey` }));
  expect(broken.message.content).toMatch(/went wrong|could not/i);
  repair();
  await discord.reply(slash(keeper, ['bucket', 'add'], { name: `${typed} grey` }));
  await discord.use(typing(keeper, ['reading'], 'bucket', { bucket: typed }));
  const opened = await discord.use(slash(keeper, ['reading']));
  await discord.reply(submit(keeper, opened, { bucket: '1', seconds: typed, stirred: 'yes' }));
  const answers = ({ path }: { path: string }) => path.includes('/callback') || path.includes('/webhooks');
  for (const fault of [
    { refuse: { status: 400, body: { code: 50035, message: 'Invalid Form Body' } } },
    serverError,
    { cut: 'before', how: 'reset' },
    { cut: 'after', how: 'closed' },
  ] as const) {
    discord.plant(fault, answers, 2);
    discord.deliver(slash(keeper, ['reading'], { bucket: `${typed} grey`, gravity: '1.44', stirred: true }));
    await sleep(700);
  }
  discord.gateway.say(`{"op":0,"t":"INTERACTION_CREATE","s":4,"d":{"${typed}":"${typed}"}}`);
  discord.gateway.say(`{"op":0,"t":"${typed}`);
  await expect.poll(() => program.log.join('')).toMatch(/refused a reply/);
  await sleep(1_000);

  const log = program.log.join('').trim().split('\n');
  expect(log.length).toBeGreaterThan(5);
  // Structured: each line is an object with a time, a level and a message.
  for (const line of log)
    expect(JSON.parse(line)).toMatchObject({
      level: expect.any(Number) as number,
      time: expect.any(Number) as number,
      msg: expect.any(String) as string,
    });
  const cookies = [phone, member].flatMap((one) => [one.cookie('room') ?? '', one.cookie('known') ?? '']);
  const tokens = [...discord.world.interactions.values()].map((one) => one.token);
  const secrets = [
    ...names,
    password,
    typed,
    passcode,
    keeperCode,
    discord.token,
    token,
    ...cookies,
    ...tokens,
  ];
  const told = secrets.filter((secret) => secret !== '' && program.log.join('').includes(secret));
  expect(told).toEqual([]);
  await discord.stop();
});
