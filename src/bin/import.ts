import { existsSync, rmSync } from 'node:fs';
import { createInterface } from 'node:readline/promises';
import { parseArgs } from 'node:util';
import { systemClock } from '../clock.ts';
import { definedOnly } from '../definedOnly.ts';
import { withoutControlsInLines } from '../contract/plainText.ts';
import { decimalMarks } from '../notebook/decimalMark.ts';
import { encodings } from '../notebook/decodeText.ts';
import { readColumnsSaid, type NotebookSaid } from '../notebook/notebookSettings.ts';
import { dayOrders } from '../notebook/readDay.ts';
import { openApp, type App } from '../start/app.ts';
import { chosenStudio, studioAmong } from '../start/chosenStudio.ts';
import { logbookOf, readConfig } from '../start/config.ts';
import { exitCodeOf, UsageProblem } from '../start/exitCodeOf.ts';
import { importSentence } from '../start/imports/exportSentences.ts';
import { importExport } from '../start/imports/importExport.ts';
import { importNotebook, readNotebook, settleByAsking, type ImportOutput } from '../start/importNotebook.ts';
import { isAddress } from '../store/engine/isAddress.ts';
import { ImportProblem } from '../store/imports/importProblem.ts';
import { importWords as w } from '../words/platform/importWords.ts';
import { notebookWords } from '../words/platform/notebookWords.ts';

const usage = `${w.usage}\n${notebookWords.usage}`;

const readArguments = () => {
  const text = { type: 'string' } as const;
  const off = { type: 'boolean', default: false } as const;
  return parseArgs({
    allowPositionals: true,
    options: {
      studio: text,
      as: { ...text, default: 'me' },
      // For an export.
      server: text,
      'states-anew': off,
      // For a notebook.
      columns: text,
      bucket: text,
      dates: text,
      decimal: text,
      separator: text,
      encoding: text,
      'dry-run': off,
      'new-buckets': off,
      undo: text,
    },
  });
};
type Values = ReturnType<typeof readArguments>['values'];

const say = (text: string) => console.log(withoutControlsInLines(text));
const refuse = (text: string) => console.error(withoutControlsInLines(text));

/** A logbook that did not exist before is left behind only when something is in it. */
const inLogbook = async (work: (app: App) => Promise<number>, isKept = true): Promise<number> => {
  const file = logbookOf(readConfig());
  const isNew = !isAddress(file) && !existsSync(file);
  const app = await openApp({ file });
  let code = 3;
  try {
    code = await work(app);
    return code;
  } finally {
    await app.store.close();
    if (isNew && (code !== 0 || !isKept))
      for (const end of ['', '-wal', '-shm', '.lock']) rmSync(`${file}${end}`, { force: true });
  }
};

const bringExportIn = (file: string, values: Values): Promise<number> =>
  inLogbook(async (app) => {
    try {
      const { studio: name, server, 'states-anew': anew } = values;
      const done = await importExport(file, app, { name, server, anew });
      say(w.brought(done.name, done.id, done.entries, done.members));
      for (const called of done.namesakes) say(w.namesake(called));
      if (done.members > 0) say(w.link);
      return 0;
    } catch (error) {
      if (!(error instanceof ImportProblem)) throw error;
      refuse(importSentence(error.why, file));
      return 1;
    }
  });

/** One of a few words that an option takes. */
const oneOf = <T extends string>(
  option: string,
  typed: string | undefined,
  all: readonly T[],
): T | undefined => {
  if (typed === undefined) return undefined;
  const found = all.find((one) => one === typed.toLowerCase());
  if (found === undefined) throw new UsageProblem(notebookWords.notOneOf(option, typed, all));
  return found;
};

const separatorSaid = (typed: string | undefined) => {
  const found = oneOf('separator', typed, [',', ';', 'tab', '\t']);
  return found === 'tab' ? '\t' : found;
};

const saidOf = ({ columns = '', bucket, dates, decimal }: Values): NotebookSaid => {
  const read: NotebookSaid['columns'] | undefined = columns === '' ? new Map() : readColumnsSaid(columns);
  if (!read) throw new UsageProblem(notebookWords.badColumns(columns));
  const [order, mark] = [oneOf('dates', dates, dayOrders), oneOf('decimal', decimal, decimalMarks)];
  return { columns: read, ...definedOnly({ bucket, dates: order, decimal: mark }) };
};

const mostOnScreen = 20;

const output = (): ImportOutput & { end(): void } => {
  const atTerminal = process.stdin.isTTY && process.stderr.isTTY;
  const lines = atTerminal ? createInterface({ input: process.stdin, output: process.stderr }) : undefined;
  // At the end of the input nobody answers any more.
  const ended = new AbortController();
  lines?.once('close', () => ended.abort());
  return {
    say,
    refuse,
    progress: (done, all) => {
      if (!process.stderr.isTTY || (done % 1000 !== 0 && done !== all)) return;
      process.stderr.write(`${notebookWords.progress(done, all)}${done === all ? '\n' : ''}`);
    },
    ask:
      lines &&
      ((question) => lines.question(question, { signal: ended.signal }).catch((): undefined => undefined)),
    most: process.stdout.isTTY ? mostOnScreen : Infinity,
    end: () => lines?.close(),
  };
};

const bringNotebookIn = async (file: string, values: Values): Promise<number> => {
  const encoding = oneOf('encoding', values.encoding, encodings);
  const separator = separatorSaid(values.separator);
  const said = saidOf(values);
  const read = readNotebook(file, definedOnly({ encoding, separator }));
  if (!read.ok) {
    refuse(`${read.why} ${notebookWords.nothingIn}`);
    return 1;
  }
  const out = output();
  try {
    const settings = await settleByAsking(read.table, said, out);
    if (!settings) {
      refuse(notebookWords.nothingIn);
      return 1;
    }
    const { 'dry-run': dryRun, 'new-buckets': newBuckets, bucket } = values;
    return await inLogbook(async (app) => {
      const studio = studioAmong(await app.store.people.studios(), values.studio);
      const { table } = read;
      const { as } = values;
      return importNotebook(app, { studio, as, table, settings, bucket, newBuckets, dryRun }, out);
    }, !dryRun);
  } finally {
    out.end();
  }
};

const takeBack = (typed: string, values: Values): Promise<number> => {
  const no = Number(typed);
  if (!Number.isSafeInteger(no) || no < 1) throw new UsageProblem(notebookWords.badUndo(typed));
  return inLogbook(async (app) => {
    const { people, imports } = app.store;
    const studio = await chosenStudio(app, values.studio);
    const member = await people.memberOf(studio, 'terminal', values.as, values.as);
    const done = await imports.takeBack(studio, no, member);
    if (done.ok) say(notebookWords.undone(no, done.entries));
    else refuse(notebookWords.noImport(no, done.known, systemClock.now()));
    return done.ok ? 0 : 1;
  });
};

process.exitCode = await exitCodeOf(usage, async () => {
  const { values, positionals } = readArguments();
  const [file, ...others] = positionals;
  const isNumber = values.server === undefined || /^\d{15,20}$/.test(values.server);
  if (others.length > 0 || values.studio?.trim() === '' || values.as.trim() === '' || !isNumber)
    throw new UsageProblem(usage);
  if (values.undo !== undefined && file === undefined) return takeBack(values.undo, values);
  if (file === undefined || values.undo !== undefined) throw new UsageProblem(usage);
  if (!existsSync(file)) throw new UsageProblem(w.noFile(file));
  return /\.json$/i.test(file) ? bringExportIn(file, values) : bringNotebookIn(file, values);
});
