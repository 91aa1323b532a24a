import { spawn } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { isAddress } from '../../src/store/engine/isAddress.ts';
import { answerSchema, type Answer } from './discord/answerSchemas.ts';

const source = (file: string) => fileURLToPath(new URL(`../../src/${file}`, import.meta.url));

export interface Said {
  code: number | null;
  stdout: string;
  stderr: string;
  /** Each line of standard output, parsed as one JSON object. */
  answers(): Answer[];
}

/** Runs the program as a script would, without this machine's settings. */
export const runSay = (
  file: string,
  args: readonly string[],
  {
    input = '',
    enough = Infinity,
  }: { input?: string; /** Closes the pipe after so many characters of output. */ enough?: number } = {},
): Promise<Said> =>
  new Promise((resolve, reject) => {
    const child = spawn(process.execPath, [source('run.js'), source('bin/say.ts'), ...args], {
      env: {
        PATH: process.env['PATH'] ?? '',
        TZ: 'UTC',
        [isAddress(file) ? 'DATABASE_URL' : 'DATABASE_FILE']: file,
      },
    });
    const heard = { stdout: '', stderr: '' };
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      heard.stdout += text;
      if (heard.stdout.length > enough) child.stdout.destroy();
    });
    child.stderr.setEncoding('utf8').on('data', (text: string) => (heard.stderr += text));
    child.on('error', reject);
    child.on('close', (code) =>
      resolve({
        code,
        ...heard,
        answers: () =>
          heard.stdout
            .split('\n')
            .slice(0, -1)
            .map((line) => answerSchema.parse(JSON.parse(line))),
      }),
    );
    // A program may exit before it has read all of its input, which closes the pipe.
    child.stdin.on('error', () => undefined).end(input);
  });
