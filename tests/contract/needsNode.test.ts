import { spawn, spawnSync } from 'node:child_process';
import { once } from 'node:events';
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { describe, expect, it, onTestFinished } from 'vitest';
import { z } from 'zod';

const root = fileURLToPath(new URL('../..', import.meta.url));
const textOf = (file: string) => readFileSync(join(root, file), 'utf8');
const packageOf = (folder: string) =>
  z
    .object({
      version: z.string(),
      engines: z.object({ node: z.string() }),
      scripts: z.record(z.string(), z.string()).default({}),
    })
    .parse(JSON.parse(textOf(join(folder, 'package.json'))));

/** Fakes another Node version, and reports at exit whether the database driver was loaded. */
const pretending = (version: string, arch: string) =>
  `data:text/javascript,${encodeURIComponent(`
    import { createRequire } from 'node:module';
    Object.defineProperty(process, 'versions', { value: { ...process.versions, node: '${version}' } });
    Object.defineProperty(process, 'arch', { value: '${arch}' });
    const { cache } = createRequire(${JSON.stringify(join(root, 'package.json'))});
    const isDriver = ({ filename, loaded }) => loaded && filename.includes('better-sqlite3');
    process.on('exit', () => console.log(Object.values(cache).some(isDriver) ? 'loaded' : 'not loaded'));
  `)}`;

/** Runs a program on a machine that has no bundled Node. */
const runOn = (version: string, ...args: string[]) => {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    ['--import', pretending(version, 'none'), ...args, '--no-such-option'],
    { cwd: root, encoding: 'utf8' },
  );
  return { status, stdout: stdout.trim(), stderr };
};

describe('a Node that is too old', () => {
  it.each(['18.20.8', '20.20.2', '22.17.1'])(
    'is told so in one sentence, before the driver: %s',
    (version) => {
      for (const program of [['dist/run/main.js'], ['src/run.js', 'src/bin/say.ts']]) {
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
    const programs = Object.entries(packageOf('').scripts).filter(([, line]) => line.includes('.ts'));
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
      for (const [, first] of line.matchAll(/node (\S+) \S+\.ts/g)) expect(first, name).toBe('src/run.js');
  });
});

describe('the Node that the project brings', () => {
  const packages = ['own-node/linux', 'own-node/desktop'].map(packageOf);

  it('comes exactly where the machine’s is too old, and is new enough itself', () => {
    expect(packageOf('').engines.node).toBe('>=22.18');
    for (const { engines, version } of packages) {
      expect(engines.node).toBe('<22.18');
      expect(runOn(version, 'dist/run/main.js').stdout).toBe('loaded');
    }
  });

  /** A folder with only the start-up programs and a stand-in for the bundled Node. */
  const withOwnNode = (script: string) => {
    const folder = mkdtempSync(join(tmpdir(), 'own-node-'));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    writeFileSync(join(folder, 'package.json'), '{ "type": "module" }');
    for (const name of ['run.js', 'needsNode.js']) cpSync(join(root, 'src', name), join(folder, name));
    const bin = join(folder, 'node_modules', `node-${process.platform}-${process.arch}`, 'bin');
    mkdirSync(bin, { recursive: true });
    writeFileSync(join(bin, 'node'), `#!/bin/sh\n${script}\n`, { mode: 0o755 });
    return [join(folder, 'run.js'), 'say.ts', '--as', 'Wren Hale'];
  };
  const old = ['--import', pretending('20.20.2', process.arch)];

  it.runIf(process.platform === 'linux')(
    'runs what an old one was told to run, and ends it as it ended',
    () => {
      const program = withOwnNode('for word in "$@"; do echo "$word"; done; exit 7');
      const { status, stdout } = spawnSync(process.execPath, [...old, ...program], { encoding: 'utf8' });
      expect([status, stdout.trim().split('\n')]).toEqual([7, [...old, ...program, 'not loaded']]);
    },
  );

  it.runIf(process.platform === 'linux')('is stopped when the old one is', async () => {
    const program = withOwnNode('trap "echo stopped; exit 3" TERM; echo runs; while :; do sleep 0.1; done');
    const child = spawn(process.execPath, [...old, ...program], { stdio: ['ignore', 'pipe', 'inherit'] });
    const said: string[] = [];
    child.stdout.setEncoding('utf8').on('data', (text: string) => said.push(text));
    await once(child.stdout, 'data');
    child.kill('SIGTERM');
    expect(await once(child, 'close')).toEqual([3, null]);
    expect(said.join('')).toBe('runs\nstopped\nnot loaded\n');
  });
});

it('the lock file names no registry', () => {
  expect(textOf('package-lock.json')).not.toContain('"resolved": "http');
});
