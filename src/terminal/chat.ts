import { randomUUID } from 'node:crypto';
import { createInterface } from 'node:readline';
import type { Action, Reply, ReplyFile } from '../contract/contract.ts';
import type { Desk, Request } from '../contract/desk.ts';
import { speak } from '../desk/speak.ts';
import type { Instant } from '../studio/ids.ts';
import type { Words } from '../words/words.ts';
import { chatWords } from '../words/platform/chatWords.ts';
import { sayWords } from '../words/platform/sayWords.ts';
import { moreAction } from '../contract/kinds/longList.ts';
import { rowActions } from '../contract/rowActions.ts';
import { completeLine } from '../desk/completeLine.ts';
import { withoutControls } from '../contract/plainText.ts';
import { replyLines } from './plainReply.ts';

export interface ChatPorts {
  desk: Desk;
  words: Words;
  who: Pick<Request, 'studio' | 'member' | 'role'>;
  now(): Instant;
  zone(): Promise<string>;
  /** The input history, newest first, and how to store it. */
  history: { lines: string[]; keep(lines: string[]): void };
  keepFile?(file: ReplyFile): string;
  /** Subscribes to reminders; returns how to stop. */
  remind?(show: (reply: Reply) => Promise<void>): Promise<{ stop(): Promise<void> }>;
  input: NodeJS.ReadableStream;
  output: NodeJS.WritableStream & { columns?: number; isTTY?: boolean };
}

/** A terminal session: reads a line and prints its reply, until `exit` or the end of input. */
export const chat = async (ports: ChatPorts): Promise<void> => {
  const { desk, words, who, now, zone, history, keepFile, remind, input, output } = ports;
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
        ([candidates, end]) => done(null, [candidates.map(withoutControls), end]),
        () => done(null, [[], line]),
      );
    },
  });
  lines.on('history', (typed) => history.keep(typed));
  let isOver = false;
  lines.once('close', () => (isOver = true));
  // What was typed before the end is still answered, and Node 26 refuses to prompt or to write after it.
  const prompt = (draft?: string): void => {
    if (isOver) return;
    lines.prompt();
    if (draft !== undefined) lines.write(draft);
  };
  lines.on('SIGINT', () => {
    if (lines.line === '') return lines.close();
    lines.write(null, { ctrl: true, name: 'u' });
  });
  let offered: Action[] = [];
  /** What “yes” presses: the answer asked whether to do it. */
  let asked: Action | undefined;
  const show = (reply: Reply, inZone: string): void => {
    const actions = [...(reply.actions ?? []), ...rowActions(reply), ...moreAction(reply)];
    const from = offered.length + 1;
    offered = [...offered, ...actions];
    const { more: _, ...rest } = {
      ...reply,
      facts: (reply.facts ?? []).map(({ label, text: said }) => ({ label, text: said })),
    };
    const shown = {
      ...rest,
      actions: actions.map(({ label, ...action }, i) => ({ ...action, label: [`${from + i} `, ...label] })),
    };
    const text = (kept?: string) =>
      replyLines(shown, { now: now(), zone: inZone }, output.columns || 80, kept);
    try {
      output.write(`${text(reply.file && keepFile?.(reply.file))}\n\n`);
    } catch (error) {
      // Only the file could not be saved: the answer and the logged entry stay.
      output.write(`${text()}\n  ${sayWords.fileNotKept(String(error))}\n\n`);
    }
  };
  const yeses: Action['label'][] = [words.plain.logIt, words.plain.logThen, words.undo.takeBack];
  const answer = async (line: string): Promise<void> => {
    const reply = await speak(line, `terminal:${randomUUID()}`, asker(), { desk, words });
    // Reminders append to the numbered actions, so that the numbers on screen stay valid.
    offered = [];
    const [first] = reply.actions ?? [];
    asked = reply.kind === 'choice' && first && yeses.includes(first.label) ? first : undefined;
    show(reply, await zone());
  };
  output.write(`${chatWords.hello}\n\n`);
  // Not awaited, or what is typed meanwhile would be lost.
  const reminders = remind?.(async (reply) => {
    const inZone = await zone();
    output.write('\n');
    show(reply, inZone);
    if (!isOver) lines.prompt(true);
  });
  prompt();
  for await (const typed of lines) {
    const line = typed.trim();
    if (/^\/?(?:exit|quit)$/i.test(line)) break;
    // Typing an action's number presses its button.
    const pressed = /^y(?:es)?$/i.test(line) ? asked : offered[Number(line) - 1];
    if (line !== '' && pressed?.press !== 'edit') await answer(pressed?.line ?? line);
    prompt(pressed?.press === 'edit' ? `${withoutControls(pressed.line)} ` : undefined);
  }
  lines.close();
  await (await reminders)?.stop();
};
