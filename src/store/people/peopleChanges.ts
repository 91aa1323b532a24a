import type { PeopleChange } from '../../studio/logbook/ports.ts';

/** Announces committed changes to people to everything that caches them. */
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
