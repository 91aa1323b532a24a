import { withoutControlsInLines } from '../contract/plainText.ts';
import { ConfigProblem } from './config.ts';
import { DiscordProblem } from '../discord/connection/discordProblem.ts';
import { asStoreProblem, StoreProblem } from '../store/engine/storeProblem.ts';
import { discordWords } from '../words/platform/discordWords.ts';
import { storeWords } from '../words/platform/storeWords.ts';

/** A wrong command line; the message says how to correct it. */
export class UsageProblem extends Error {
  override readonly name = 'UsageProblem';
}

const isMistyped = (error: unknown): error is Error =>
  error instanceof Error && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS');

const pathOf = (error: unknown): string =>
  error instanceof Error && 'path' in error ? String(error.path) : 'what was to be written';

/**
 * Runs an operator's command and returns its exit code: the command's own, 2 for a wrong command line or setting, 3 for
 * file trouble or a bug. Trouble is printed as one sentence.
 */
export const exitCodeOf = async (usage: string, command: () => Promise<number>): Promise<number> => {
  try {
    return await command();
  } catch (error) {
    if (error instanceof StoreProblem) {
      console.error(storeWords.problem[error.kind](error.file));
      return 3;
    }
    if (error instanceof DiscordProblem) {
      console.error(discordWords.problem[error.kind]);
      return error.kind === 'token' ? 2 : 3;
    }
    if (error instanceof UsageProblem || error instanceof ConfigProblem) {
      console.error(withoutControlsInLines(error.message));
      return 2;
    }
    if (isMistyped(error)) {
      console.error(withoutControlsInLines(`${error.message}\n${usage}`));
      return 2;
    }
    const problem = asStoreProblem(error, pathOf(error));
    console.error(problem instanceof StoreProblem ? storeWords.problem[problem.kind](problem.file) : error);
    return 3;
  }
};
