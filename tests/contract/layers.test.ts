import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

const imports = 'eslint(no-restricted-imports)';

/** What a rule must catch: a file that breaks it, and the rule's name. */
const planted: [file: string, text: string, rule: string][] = [
  ['src/glaze/a.ts', "import { openStore } from '../store/openStore.ts';", imports],
  ['src/glaze/b.ts', "import type { Studio } from '../studio/studio.ts';", imports],
  ['src/glaze/c.ts', "import { readFileSync } from 'node:fs';", imports],
  ['src/glaze/d.ts', "import { addDays } from 'date-fns/addDays';", imports],
  ['src/glaze/e.ts', "export { decide } from '../studio/decide.ts';", imports],
  ['src/glaze/f.ts', "export const late = () => import('../app.ts');", imports],
  ['src/studio/a.ts', "import type { Reply } from '../command/contract.ts';", imports],
  ['src/studio/b.ts', "import { en } from '../words/en.ts';", imports],
  ['src/studio/c.ts', "import { systemClock } from '../clock.ts';", imports],
  ['src/studio/d.ts', "import { addDays } from 'date-fns';", imports],
  ['src/words/a.ts', "import { decide } from '../studio/decide.ts';", imports],
  ['src/words/b.ts', "import type { Reply } from '../command/contract.ts';", imports],
  ['src/command/a.ts', "import { openStore } from '../store/openStore.ts';", imports],
  ['src/command/kinds/a.ts', "import { openApp } from '../../app.ts';", imports],
  ['src/command/b.ts', "import { Client } from 'discord.js';", imports],
  ['src/store/a.ts', "import { en } from '../words/en.ts';", imports],
  ['src/store/b.ts', "import { openDesk } from '../command/dispatch.ts';", imports],
  ['src/store/migrations/a.ts', "import { openDesk } from '../../command/dispatch.ts';", imports],
  ['src/reminders/a.ts', "import { openStore } from '../store/openStore.ts';", imports],
  ['src/search/a.ts', "import { openStore } from '../store/openStore.ts';", imports],
  ['src/search/b.ts', "import { loadNotes } from '../seed/loadNotes.ts';", imports],
  ['src/chart/a.ts', "import { openStore } from '../store/openStore.ts';", imports],
  ['src/discord/a.ts', "import { openStore } from '../store/openStore.ts';", imports],
  ['src/discord/b.ts', "import { startRoom } from '../room/startRoom.ts';", imports],
  ['src/discord/c.ts', "import { decide } from '../studio/decide.ts';", imports],
  ['src/terminal/a.ts', "import { startDiscord } from '../discord/startDiscord.ts';", imports],
  ['src/terminal/b.ts', "import { openStore } from '../store/openStore.ts';", imports],
  ['src/room/a.ts', "import { openStore } from '../store/openStore.ts';", imports],
  ['src/room/routes/a.ts', "import { replyLines } from '../../terminal/plainReply.ts';", imports],
  ['src/room/page/a.ts', "import { startRoom } from '../startRoom.ts';", imports],
  ['commands/a.ts', "import { openStore } from '../src/store/openStore.ts';", imports],
  ['commands/bucket/a.ts', "import { Hono } from 'hono';", imports],
  ['src/studio/now.ts', 'export const now = () => Date.now();', 'eslint(no-restricted-globals)'],
  ['src/room/now.ts', 'export const now = () => new Date(0);', 'eslint(no-restricted-globals)'],
  ['src/glaze/any.ts', 'export const f = (x: any) => x;', 'typescript(no-explicit-any)'],
  ['src/glaze/bang.ts', 'export const f = (x?: number) => x!;', 'typescript(no-non-null-assertion)'],
  ['src/glaze/hush.ts', '// @ts-ignore\nexport const x = 1;', 'typescript(ban-ts-comment)'],
  ['src/glaze/whole.ts', 'export default 1;', 'import(no-default-export)'],
  ['src/words/round.ts', "import { y } from './back.ts';\nexport const x = () => y;", 'import(no-cycle)'],
  ['src/words/back.ts', "import { x } from './round.ts';\nexport const y = () => x;", 'import(no-cycle)'],
];

/** What the rules let through: the ways in which layers do meet. */
const allowed: [file: string, text: string][] = [
  [
    'src/studio/ok.ts',
    "import { water } from '../glaze/water.ts';\nimport type { Clock } from '../clock.ts';\nexport const x: [typeof water, Clock?] = [water];",
  ],
  [
    'src/words/ok.ts',
    "import type { Studio } from '../studio/studio.ts';\nexport const x = (s: Studio) => s;",
  ],
  [
    'src/command/kinds/ok.ts',
    "import { a } from '../contract.ts';\nimport { b } from '../../studio/ids.ts';\nexport const x = [a, b];",
  ],
  ['commands/bucket/ok.ts', "import { a } from '../../src/command/kinds/bucket.ts';\nexport const x = a;"],
  [
    'src/discord/ok.ts',
    "import { Client } from 'discord.js';\nimport { a } from '../command/parseLine.ts';\nexport const x = [Client, a];",
  ],
  [
    'src/search/ok.ts',
    "import MiniSearch from 'minisearch';\nimport type { Note } from '../studio/handbook.ts';\nexport const x = (n: Note) => [n, MiniSearch];",
  ],
  ['src/app.ts', "import { openStore } from './store/openStore.ts';\nexport const x = openStore;"],
  ['src/clock.ts', 'export const now = () => Date.now();'],
];

interface Finding {
  filename: string;
  code: string;
}

let root: string;
let findings: Finding[];

const lint = (folder: string): Finding[] => {
  const bin = resolve('node_modules/.bin/oxlint');
  try {
    return JSON.parse(execFileSync(bin, ['-f', 'json', '.'], { cwd: folder, encoding: 'utf8' })).diagnostics;
  } catch (error) {
    // It ends with 1 when it has found something, which is what is wanted here.
    if (error instanceof Error && 'stdout' in error) return JSON.parse(String(error.stdout)).diagnostics;
    throw error;
  }
};

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'layers-'));
  copyFileSync('.oxlintrc.json', join(root, '.oxlintrc.json'));
  for (const [file, text] of [...planted, ...allowed]) {
    mkdirSync(join(root, dirname(file)), { recursive: true });
    writeFileSync(join(root, file), `${text}\n`);
  }
  findings = lint(root);
});
afterAll(() => rmSync(root, { recursive: true }));

describe('the linter', () => {
  it.each(planted)('catches %s: %s', (file, _text, rule) => {
    const found = findings.filter(({ filename }) => filename === file).map(({ code }) => code);
    expect(found).toContain(rule);
  });

  it.each(allowed)('lets through %s', (file) => {
    expect(findings.filter(({ filename }) => filename === file)).toEqual([]);
  });
});
