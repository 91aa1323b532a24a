import { existsSync, readFileSync } from 'node:fs';
import { parse } from 'dotenv';
import { describe, expect, it } from 'vitest';
import { readConfig } from '../../src/start/config.ts';
import { foldFiles, foldKeyNow } from '../../src/generated/foldKeyNow.ts';
import { decisionPage } from '../../src/generated/decisionPage.ts';
import { readmeNow } from '../../src/generated/readmeNow.ts';
import { foldKey } from '../../src/store/states/foldKey.ts';
import { rules } from '../../src/studio/verdict/rules.ts';

const documents = ['README.md', 'DEVELOPERS.md'];
const read = (file: string) => readFileSync(file, 'utf8');

describe('the README', () => {
  it('shows the commands as they are defined, and the answers that the demo gives (else: npm run readme)', async () => {
    const readme = read('README.md');
    expect(await readmeNow(readme)).toBe(readme);
  });
});

describe('docs/decision.md', () => {
  it('shows the rules and the grid as they are (else: npm run readme)', () => {
    expect(read('docs/decision.md')).toBe(decisionPage());
  });

  it('has every rule, and every cell of gravity and flow', () => {
    const lines = read('docs/decision.md').split('\n');
    expect(lines.filter((line) => /^\| \d+ \|/.test(line))).toHaveLength(rules.length);
    const cells = lines
      .filter((line) => /^\| \*\*(?:low|in|high)\*\*/.test(line))
      .map((line) => line.split(' | '));
    expect(cells.map((row) => row.length)).toEqual([5, 5, 5]);
  });
});

describe('the key of cached states', () => {
  it('is that of the sources as they are (else: npm run build)', () => {
    expect(foldKey).toBe(foldKeyNow());
  });

  it('comes from every file that a state depends on: the fold, its arithmetic, and how entries are read', () => {
    expect(foldFiles()).toEqual(
      expect.arrayContaining([
        'src/studio/bucket/fold/foldBucket.ts',
        'src/studio/bucket/fold/applyGravity.ts',
        'src/studio/contents/contents.ts',
        'src/studio/contents/pailVolumeFromRimGap.ts',
        'src/studio/settings/bucketSettings.ts',
        'src/glaze/materials/solutionDensity.ts',
        'src/glaze/units.ts',
        'src/store/entries/eventRow.ts',
      ]),
    );
  });
});

describe.each(documents)('%s', (file) => {
  const { scripts } = JSON.parse(read('package.json')) as { scripts: Record<string, string> };

  it('names only scripts that there are', () => {
    const named = [...read(file).matchAll(/npm run (?:-s )?([a-z]+)/g)].map(([, name]) => name);
    expect(named.length).toBeGreaterThan(0);
    expect(named.filter((name) => name === undefined || !(name in scripts))).toEqual([]);
  });

  it('points only to files that there are', () => {
    const links = [...read(file).matchAll(/\]\((?!https?:)([^)#]+)/g)].map(([, path]) => path ?? '');
    expect(links.length).toBeGreaterThan(0);
    expect(links.filter((path) => !existsSync(path))).toEqual([]);
  });
});

describe('.env.example', () => {
  const example = parse(read('.env.example'));

  it('lists every setting that is read, and no other', () => {
    const settings = [...read('src/start/config.ts').matchAll(/^ {2}([A-Z_]+):/gm)].map(([, name]) => name);
    expect(Object.keys(example).sort()).toEqual(settings.sort());
  });

  it('is what is taken when nothing is set', () => {
    const filled = Object.entries(example).filter(([, value]) => value !== '');
    expect(readConfig(example)).toEqual(readConfig({}));
    expect(readConfig({})).toMatchObject(Object.fromEntries(filled.filter(([name]) => name !== 'ROOM_PORT')));
  });
});
