import type { PeopleChange } from '../../studio/logbook/ports.ts';

/** Tells whoever remembers people what has become of them, once it is in the file. */
export class PeopleChanges {
  readonly #listeners = new Set<(change: PeopleChange) => void>();

  listen(listener: (change: PeopleChange) => void): () => void {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  }

  tell(change: PeopleChange): void {
    for (const listen of this.#listeners) listen(change);
  }
}
