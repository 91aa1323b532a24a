import { StoreProblem } from '../store/storeProblem.ts';
import { storeWords } from '../words/storeWords.ts';

const isMistyped = (error: unknown): error is Error =>
  error instanceof Error && 'code' in error && String(error.code).startsWith('ERR_PARSE_ARGS');

/** Runs an operator's command: 0 done, 1 trouble with the file, 2 mistyped; each said in one sentence. */
export const exitCodeOf = async (usage: string, command: () => Promise<number>): Promise<number> => {
  try {
    return await command();
  } catch (error) {
    if (error instanceof StoreProblem) {
      console.error(storeWords.problem[error.kind](error.file));
      return 1;
    }
    if (isMistyped(error)) {
      console.error(`${error.message}\n${usage}`);
      return 2;
    }
    throw error;
  }
};
