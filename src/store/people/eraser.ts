import { setTimeout as pause } from 'node:timers/promises';
import { withoutWords } from '../../studio/people/withoutWords.ts';
import { eraseNames } from './eraseNames.ts';
import {
  eraseEntries,
  eraseHeldLines,
  eraseOpenQuestions,
  erasePosts,
  eraseReplies,
  gatherTexts,
} from './eraseWords.ts';
import { nextErasure, noteErasure, type Erasure } from './erasureRow.ts';
import type { PeopleChanges } from './peopleChanges.ts';
import { writeAll, type Turns } from '../engine/turns.ts';

/** Whoever reads an older state, such as a backup, is done within seconds. */
const mostTries = 60;
const millisecondsBetween = 500;
/** Longer than another process takes from an answer to its post. */
const postingTakes = 1_000;

/** Holds lines back for moments before it writes them. */
interface Written {
  written(): Promise<void>;
}

export interface Eraser {
  /** Starts pending erasures. */
  wake(): void;
  /** Resolves when no erasure is running. */
  idle(): Promise<void>;
  /** Finishes the running erasure and starts no other. */
  end(): Promise<void>;
}

/**
 * Erases members' words from everything that stores them, and then from the bytes of the file. Pending erasures are
 * stored and every step can be repeated, so an interrupted one goes on at the next start.
 */
export const openEraser = (turns: Turns, changes: PeopleChanges, lines: Written): Eraser => {
  let going: Promise<void> = Promise.resolve();
  let ending = false;

  const tell = (erasure: Erasure): void => {
    const { studio, members } = erasure;
    changes.tell({ kind: 'erased', studio, members, clean: withoutWords(erasure) });
  };

  const clean = async (erasure: Erasure): Promise<void> => {
    tell(erasure);
    if (erasure.members.length > 0) await eraseEntries(turns, erasure);
    else if (erasure.names.length > 0) await eraseNames(turns, erasure);
    await eraseReplies(turns, erasure);
    await erasePosts(turns, erasure);
    await lines.written();
    await eraseHeldLines(turns, erasure);
    await eraseOpenQuestions(turns, erasure);
    // Again, for answers that were being made when the erasure began.
    tell(erasure);
    if (!turns.isShared) return;
    await pause(postingTakes);
    await erasePosts(turns, erasure);
    await eraseHeldLines(turns, erasure);
  };

  const note = (erasure: Erasure): Promise<void> =>
    writeAll(turns, 'directory', ({ db }) => noteErasure(db, erasure));

  const work = async (): Promise<void> => {
    for (let tries = 0; ;) {
      const erasure = await turns.read('directory', ({ db }) => nextErasure(db));
      if (!erasure) return;
      if (erasure.step === 'gather')
        await note({ ...erasure, step: 'clean', texts: await gatherTexts(turns, erasure) });
      else if (erasure.step === 'clean') {
        await clean(erasure);
        await note({ ...erasure, step: 'compact', names: [], texts: [] });
      } else if (await turns.compact())
        await writeAll(turns, 'directory', ({ db }) =>
          db.deleteFrom('erasures').where('id', '=', erasure.id).execute(),
        );
      else {
        tries += 1;
        if (ending || tries >= mostTries) return;
        await pause(millisecondsBetween);
      }
    }
  };

  /** Errors are ignored: the next write reports trouble with the file, and the erasure is tried again later. */
  const wake = (): void => {
    if (!ending) going = going.then(work).catch(() => undefined);
  };
  changes.listen(({ kind }) => {
    if (kind === 'erased') wake();
  });

  return {
    wake,
    async idle() {
      let seen: Promise<void> | undefined;
      while (seen !== going) await (seen = going);
    },
    async end() {
      ending = true;
      await going;
    },
  };
};
