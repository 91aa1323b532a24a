import { execFileSync } from 'node:child_process';
import { copyFileSync, mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join, resolve } from 'node:path';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

/** A file that breaks each rule, with the rule's name. */
const planted: [file: string, text: string, rule: string][] = [
  ['src/studio/now.ts', 'export const now = () => Date.now();', 'eslint(no-restricted-globals)'],
  ['src/room/now.ts', 'export const now = () => new Date(0);', 'eslint(no-restricted-globals)'],
  ['src/glaze/any.ts', 'export const f = (x: any) => x;', 'typescript(no-explicit-any)'],
  ['src/glaze/bang.ts', 'export const f = (x?: number) => x!;', 'typescript(no-non-null-assertion)'],
  ['src/glaze/hush.ts', '// @ts-ignore\nexport const x = 1;', 'typescript(ban-ts-comment)'],
  ['src/glaze/whole.ts', 'export default 1;', 'import(no-default-export)'],
  ['src/words/round.ts', "import { y } from './back.ts';\nexport const x = () => y;", 'import(no-cycle)'],
  ['src/words/back.ts', "import { x } from './round.ts';\nexport const y = () => x;", 'import(no-cycle)'],
];

/** The one file that may ask the machine for the time. */
const allowed: [file: string, text: string][] = [['src/clock.ts', 'export const now = () => Date.now();']];

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
    // The linter exits with 1 when it finds something, which is expected here.
    if (error instanceof Error && 'stdout' in error) return JSON.parse(String(error.stdout)).diagnostics;
    throw error;
  }
};

beforeAll(() => {
  root = mkdtempSync(join(tmpdir(), 'lint-'));
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
