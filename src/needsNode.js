// What every program loads first: on a Node that is too old it goes on under the one that `npm ci` brought along, or says
// what is missing. In plain JavaScript, which such a Node can read.
import { spawn } from 'node:child_process';
import { createRequire } from 'node:module';

/**
 * npm runs its scripts in a shell that passes no signal on: whoever ends `npm start` ends the shell alone. A program
 * whose parent is gone has another one.
 */
export const whenShellEnds = (end) => {
  if (process.env.npm_lifecycle_event !== 'start') return;
  const shell = process.ppid;
  const looking = setInterval(() => {
    if (process.ppid === shell) return;
    clearInterval(looking);
    end();
  }, 500).unref();
};

const [major, minor] = process.versions.node.split('.').map(Number);

/** The Node that was installed with the project, if there is one. */
const ownNode = () => {
  const place = `${process.platform}-${process.arch}`;
  const name = { 'win32-x64': 'win-x64', 'win32-arm64': 'win-arm64', 'darwin-arm64': 'bin-darwin-arm64' }[
    place
  ];
  try {
    const file = process.platform === 'win32' ? 'node.exe' : 'node';
    return createRequire(import.meta.url).resolve(`node-${name || place}/bin/${file}`);
  } catch {
    return undefined;
  }
};

/** Runs the same command line under another Node, and exits with its status. */
const goOnUnder = (node) =>
  new Promise(() => {
    // A terminal sends Ctrl-C to both processes. Other signals reach only this one, so they are passed on.
    process.on('SIGINT', () => undefined);
    for (const signal of ['SIGTERM', 'SIGHUP']) process.on(signal, () => child.kill(signal));
    const child = spawn(node, process.execArgv.concat(process.argv.slice(1)), { stdio: 'inherit' });
    whenShellEnds(() => child.kill('SIGTERM'));
    child.on('exit', (code) => process.exit(code === null ? 1 : code));
  });

if (major < 22 || (major === 22 && minor < 18)) {
  const own = ownNode();
  if (own && own !== process.execPath) await goOnUnder(own);
  console.error(
    `This needs Node.js 22.18 or later, and this is ${process.versions.node}: install a newer one from https://nodejs.org.`,
  );
  process.exit(2);
}
