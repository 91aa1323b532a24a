import { spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';
import { z } from 'zod';

const root = fileURLToPath(new URL('../..', import.meta.url));
const textOf = (file: string) => readFileSync(`${root}${file}`, 'utf8');
const packageSchema = z.object({ engines: z.object({ node: z.string() }), version: z.string() });
const packageOf = (folder: string) => packageSchema.parse(JSON.parse(textOf(`${folder}package.json`)));

/** Takes a Node for an older one, and says at the end whether the database driver was ever loaded. */
const pretending = (version: string) =>
  `data:text/javascript,${encodeURIComponent(`
    import { createRequire } from 'node:module';
    const versions = { ...process.versions, node: '${version}' };
    Object.defineProperty(process, 'versions', { value: versions });
    const { cache } = createRequire('${root}package.json');
    process.on('exit', () =>
      console.log(Object.values(cache).some(({ filename, loaded }) => loaded && filename.includes('better-sqlite3')) ? 'loaded' : 'not loaded'));
  `)}`;

const runOn = (version: string, ...args: string[]) => {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', pretending(version), ...args, '--no-such-option'],
    { cwd: root, encoding: 'utf8' },
  );
  return { status, stdout: stdout.trim(), stderr };
};

const scripts = z
  .object({ scripts: z.record(z.string(), z.string()) })
  .parse(JSON.parse(textOf('package.json'))).scripts;

describe('a Node that is too old', () => {
  it.each(['18.20.8', '20.20.2', '22.17.1'])(
    'is told so in one sentence, before the driver: %s',
    (version) => {
      for (const program of [['dist/run/main.js'], ['--import', './src/needsNode.js', 'src/bin/say.ts']]) {
        const { status, stdout, stderr } = runOn(version, ...program);
        expect([status, stdout]).toEqual([2, 'not loaded']);
        expect(stderr).toMatch(/^This needs Node\.js 22\.18 or later, and this is \d+\.\d+\.\d+: .+\.\n$/);
        expect(stderr).toContain(version);
      }
    },
  );

  it.each(['22.18.0', '24.21.0', '26.10.0'])('is not one that is new enough: %s', (version) => {
    const { stdout, stderr } = runOn(version, 'dist/run/main.js');
    expect(stdout).toBe('loaded');
    expect(stderr).toContain('--no-such-option');
  });

  it('is looked for by every program that npm runs here', () => {
    const programs = Object.entries(scripts).filter(([, line]) => line.includes('.ts'));
    expect(programs.map(([name]) => name)).toEqual(
      expect.arrayContaining([
        'start',
        'say',
        'chat',
        'seed',
        'rebuild',
        'export',
        'backup',
        'readme',
        'bench',
      ]),
    );
    for (const [name, line] of programs)
      for (const [, first] of line.matchAll(/node (\S+ \S+) \S+\.ts/g))
        expect(first, name).toBe('--import ./src/needsNode.js');
  });
});

describe('the Node that the project brings', () => {
  it('comes exactly where the machine’s own is too old', () => {
    expect(packageOf('').engines.node).toBe('>=22.18');
    for (const folder of ['own-node/linux/', 'own-node/desktop/'])
      expect(packageOf(folder).engines.node).toBe('<22.18');
  });

  it('is new enough itself', () => {
    for (const folder of ['own-node/linux/', 'own-node/desktop/'])
      expect(runOn(packageOf(folder).version, 'dist/run/main.js').stdout).toBe('loaded');
  });
});

it('the lock file names no registry', () => {
  expect(textOf('package-lock.json')).not.toMatch(/https?:\/\/[^"]*\.tgz/);
  expect(textOf('package-lock.json')).not.toContain('"resolved": "http');
});
