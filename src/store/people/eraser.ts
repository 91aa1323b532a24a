import { setTimeout as pause } from 'node:timers/promises';
import { withoutWords } from '../../studio/people/withoutWords.ts';
import { eraseNames } from './eraseNames.ts';
import { eraseOpenQuestions } from './eraseOpenQuestions.ts';
import { eraseEntries, eraseHeldLines, erasePosts, eraseReplies, gatherTexts } from './eraseWords.ts';
import { nextErasure, noteErasure, type Erasure } from './erasureRow.ts';
import type { PeopleChanges } from './peopleChanges.ts';
import type { Turns } from '../engine/turns.ts';

/** Whoever reads an older state, such as a backup, is done within seconds. */
const mostTries = 60;
const millisecondsBetween = 500;
/** Longer than another process takes from an answer to its post. */
const postingTakes = 1_000;

/** What is held back for moments before it is written. */
interface Written {
  written(): Promise<void>;
}

/**
 * Erases members' words from everything that stores them, and then from the bytes of the file. Pending erasures are
 * stored and every step can be repeated, so an interrupted one goes on at the next start.
 */
export class Eraser {
  readonly #turns: Turns;
  readonly #changes: PeopleChanges;
  readonly #lines: Written;
  #going: Promise<void> = Promise.resolve();
  #ending = false;

  constructor(turns: Turns, changes: PeopleChanges, lines: Written) {
    this.#turns = turns;
    this.#lines = lines;
    this.#changes = changes;
    changes.listen(({ kind }) => {
      if (kind === 'erased') this.wake();
    });
  }

  /**
   * Starts pending erasures. Errors are ignored here: the next write reports trouble with the file, and the erasure
   * is tried again later.
   */
  wake(): void {
    if (!this.#ending) this.#going = this.#going.then(() => this.#work()).catch(() => undefined);
  }

  /** Resolves when no erasure is running. */
  async idle(): Promise<void> {
    let seen: Promise<void> | undefined;
    while (seen !== this.#going) await (seen = this.#going);
  }

  /** Finishes the running erasure and starts no other. */
  async end(): Promise<void> {
    this.#ending = true;
    await this.#going;
  }

  async #work(): Promise<void> {
    for (;;) {
      const erasure = await this.#turns.read('directory', ({ db }) => nextErasure(db));
      if (!erasure || !(await this.#carryOut(erasure))) return;
    }
  }

  async #carryOut(erasure: Erasure): Promise<boolean> {
    switch (erasure.step) {
      case 'gather': {
        const texts = await gatherTexts(this.#turns, erasure);
        await this.#note({ ...erasure, step: 'clean', texts });
        return true;
      }
      case 'clean': {
        this.#tell(erasure);
        if (erasure.members.length > 0) await eraseEntries(this.#turns, erasure);
        else if (erasure.names.length > 0) await eraseNames(this.#turns, erasure);
        await eraseReplies(this.#turns, erasure);
        await erasePosts(this.#turns, erasure);
        await this.#lines.written();
        await eraseHeldLines(this.#turns, erasure);
        await eraseOpenQuestions(this.#turns, erasure);
        // Again, for answers that were being made when the erasure began.
        this.#tell(erasure);
        if (this.#turns.isShared) {
          await pause(postingTakes);
          await erasePosts(this.#turns, erasure);
          await eraseHeldLines(this.#turns, erasure);
        }
        await this.#note({ ...erasure, step: 'compact', names: [], texts: [] });
        return true;
      }
      case 'compact':
        return this.#compact(erasure);
    }
  }

  async #compact({ id }: Erasure): Promise<boolean> {
    for (let tries = 1; !(await this.#turns.compact()); tries += 1) {
      if (this.#ending || tries >= mostTries) return false;
      await pause(millisecondsBetween);
    }
    await this.#turns.write('directory', async ({ db }) => {
      await db.deleteFrom('erasures').where('id', '=', id).execute();
      return { keep: true, value: undefined };
    });
    return true;
  }

  #note(erasure: Erasure): Promise<void> {
    return this.#turns.write('directory', async ({ db }) => {
      await noteErasure(db, erasure);
      return { keep: true, value: undefined };
    });
  }

  #tell(erasure: Erasure): void {
    const { studio, members } = erasure;
    this.#changes.tell({ kind: 'erased', studio, members, clean: withoutWords(erasure) });
  }
}
