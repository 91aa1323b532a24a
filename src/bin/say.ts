import { randomUUID } from 'node:crypto';
import { createInterface } from 'node:readline';
import { parseArgs } from 'node:util';
import { openApp, type App } from '../start/app.ts';
import { systemClock } from '../clock.ts';
import { logbookOf, readConfig } from '../start/config.ts';
import type { Reply } from '../contract/contract.ts';
import { speak, type Speaker } from '../desk/speak.ts';
import { instant, type Instant, type Role, type StudioId } from '../studio/ids.ts';
import { keepFile } from '../terminal/keepFile.ts';
import { jsonLine, replyJson, replyLines } from '../terminal/plainReply.ts';
import { readIsoInstant } from '../studio/time/isoInstant.ts';
import { sayWords } from '../words/platform/sayWords.ts';
import { tellRoomAddress } from '../start/roomAddress.ts';
import { chosenStudio } from '../start/chosenStudio.ts';
import { exitCodeOf, UsageProblem } from '../start/exitCodeOf.ts';

interface Setting {
  name: string;
  role: Role;
  at: Instant | undefined;
}

interface Said {
  refused: boolean;
  broken: boolean;
}

/** Runs lines one after another, each in its own transaction, and prints each reply at once. */
const speaker = (
  app: App,
  studio: StudioId,
  { json, files }: { json: boolean; files?: string | undefined },
) => {
  const said: Said = { refused: false, broken: false };
  let replies = 0;
  const say = async (line: string, { name, role, at }: Setting) => {
    const now = at ?? systemClock.now();
    const member = await app.store.people.memberOf(studio, 'terminal', name, name);
    const who: Speaker = { studio, member, role, now };
    const reply = await speak(line, `terminal:${randomUUID()}`, who, app);
    await print(reply, now);
    said.refused ||= reply.kind === 'refusal' || reply.kind === 'choice';
    said.broken ||= reply.kind === 'error';
  };
  const print = async (reply: Reply, now: Instant) => {
    const { zone } = await app.store.books.read(studio, (book) => book.studio());
    let kept: string | undefined;
    try {
      if (reply.file && files !== undefined) kept = keepFile(files, reply.file);
    } catch (error) {
      // Only the reply's file could not be written: the answer and the logged entry stay.
      said.broken = true;
      console.error(sayWords.fileNotKept(String(error)));
    }
    const text = json
      ? jsonLine(replyJson(reply, { now, zone }))
      : replyLines(reply, { now, zone }, process.stdout.columns || 80, kept);
    const apart = !json && replies++ > 0 ? '\n' : '';
    process.stdout.write(`${apart}${text}\n`);
  };
  return { say, said };
};

/** `@ISO-INSTANT NAME [keeper]` sets clock, member and role for the lines after it. */
const readSetting = (line: string): Setting => {
  const [, at = '', name = '', keeper] = /^@(\S+)\s+(.+?)(\s+keeper)?\s*$/.exec(line) ?? [];
  const found = readIsoInstant(at);
  if (found === undefined || name === '') throw new UsageProblem(sayWords.badSetting(line));
  return { at: instant(found), name, role: keeper === undefined ? 'member' : 'keeper' };
};

/** A reader such as `head` may close the pipe early: then no further line is run. */
const untilNobodyListens = (): { readonly listens: boolean } => {
  const reader = { listens: true };
  process.stdout.on('error', (error: NodeJS.ErrnoException) => {
    if (error.code !== 'EPIPE') throw error;
    reader.listens = false;
  });
  return reader;
};

process.exitCode = await exitCodeOf(sayWords.usage, async () => {
  const { values, positionals } = parseArgs({
    allowPositionals: true,
    options: {
      as: { type: 'string', default: 'me' },
      keeper: { type: 'boolean', default: false },
      at: { type: 'string' },
      json: { type: 'boolean', default: false },
      files: { type: 'string' },
      studio: { type: 'string' },
    },
  });
  if (positionals.length === 0) throw new UsageProblem(sayWords.usage);
  const at = values.at === undefined ? undefined : readIsoInstant(values.at);
  if (values.at !== undefined && at === undefined) throw new UsageProblem(sayWords.badInstant(values.at));
  if (values.as.trim() === '') throw new UsageProblem(sayWords.noName);
  const setting: Setting = { name: values.as, role: values.keeper ? 'keeper' : 'member', at };
  const config = readConfig();
  const app = await openApp({ file: logbookOf(config) });
  const reader = untilNobodyListens();
  try {
    const studio = await chosenStudio(app, values.studio);
    await tellRoomAddress(app, studio, config);
    const { say, said } = speaker(app, studio, values);
    if (positionals.length === 1 && positionals[0] === '-') {
      let current = setting;
      for await (const raw of createInterface({ input: process.stdin, crlfDelay: Infinity })) {
        if (!reader.listens) break;
        const line = raw.trim();
        if (line === '' || line.startsWith('#')) continue;
        if (line.startsWith('@')) current = readSetting(line);
        else await say(line, current);
      }
    } else for (const line of positionals) await say(line, setting);
    if (said.broken) return 3;
    return said.refused ? 1 : 0;
  } finally {
    await app.store.close();
  }
});
