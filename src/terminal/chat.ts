import { randomUUID } from 'node:crypto';
import { createInterface } from 'node:readline';
import type { Action, Desk, Reply, ReplyFile, Request } from '../contract/contract.ts';
import { speak } from '../desk/speak.ts';
import type { Instant } from '../studio/ids.ts';
import type { Words } from '../words/words.ts';
import { chatWords } from '../words/platform/chatWords.ts';
import { sayWords } from '../words/platform/sayWords.ts';
import { moreAction } from '../contract/kinds/longList.ts';
import { completeLine } from '../desk/completeLine.ts';
import { replyLines } from './plainReply.ts';

export interface ChatPorts {
  desk: Desk;
  words: Words;
  who: Pick<Request, 'studio' | 'member' | 'role'>;
  now(): Instant;
  zone(): Promise<string>;
  /** What was typed before, newest first, and where it is kept. */
  history: { lines: string[]; keep(lines: string[]): void };
  /** Keeps a reply's file; answers where. */
  keepFile?(file: ReplyFile): string;
  /** Hands over what a reminder is to be shown with; answers how to end that. */
  remind?(show: (reply: Reply) => Promise<void>): Promise<{ stop(): Promise<void> }>;
  input: NodeJS.ReadableStream;
  output: NodeJS.WritableStream & { columns?: number; isTTY?: boolean };
}

/** A conversation at a terminal: a line in, a reply out, until `exit` or the end of the input. */
export const chat = async ({
  desk,
  words,
  who,
  now,
  zone,
  history,
  keepFile,
  remind,
  input,
  output,
}: ChatPorts): Promise<void> => {
  const asker = () => ({ ...who, now: now() });
  const lines = createInterface({
    input,
    output,
    terminal: output.isTTY === true,
    prompt: chatWords.prompt,
    history: history.lines,
    historySize: 500,
    removeHistoryDuplicates: true,
    completer: (line: string, done: (error: Error | null, completion: [string[], string]) => void) => {
      completeLine(line, asker(), desk).then(
        (completion) => done(null, completion),
        () => done(null, [[], line]),
      );
    },
  });
  lines.on('history', (typed) => history.keep(typed));
  lines.on('SIGINT', () => {
    if (lines.line === '') return lines.close();
    lines.write(null, { ctrl: true, name: 'u' });
  });
  let offered: Action[] = [];
  const show = (reply: Reply, inZone: string): void => {
    const actions = [...(reply.actions ?? []), ...moreAction(reply)];
    const from = offered.length + 1;
    offered = [...offered, ...actions];
    const { more: _, ...rest } = reply;
    const shown = {
      ...rest,
      actions: actions.map(({ label, ...action }, i) => ({ ...action, label: [`${from + i} `, ...label] })),
    };
    const text = (kept?: string) =>
      replyLines(shown, { now: now(), zone: inZone }, output.columns || 80, kept);
    try {
      output.write(`${text(reply.file && keepFile?.(reply.file))}\n\n`);
    } catch (error) {
      // Its file cannot be kept: what was answered stands, and so does what was logged.
      output.write(`${text()}\n  ${sayWords.fileNotKept(String(error))}\n\n`);
    }
  };
  const answer = async (line: string): Promise<void> => {
    const reply = await speak(line, `terminal:${randomUUID()}`, asker(), { desk, words });
    // A reminder only adds its numbers: those that somebody is about to type stay what they are.
    offered = [];
    show(reply, await zone());
  };
  output.write(`${chatWords.hello}\n\n`);
  // Not waited for: what is typed meanwhile would be lost.
  const reminders = remind?.(async (reply) => {
    const inZone = await zone();
    output.write('\n');
    show(reply, inZone);
    lines.prompt(true);
  });
  lines.prompt();
  for await (const typed of lines) {
    const line = typed.trim();
    if (/^\/?(?:exit|quit)$/i.test(line)) break;
    // The number of an action is the press of its button.
    const pressed = offered[Number(line) - 1];
    if (line !== '' && pressed?.press !== 'edit') await answer(pressed?.line ?? line);
    lines.prompt();
    if (pressed?.press === 'edit') lines.write(`${pressed.line} `);
  }
  lines.close();
  await (await reminders)?.stop();
};
