import { remember } from './browser/dom.ts';

export type Sending =
  | {
      line: string;
      /** The number of the post whose button this is. */
      pressed?: number;
    }
  | { path: string[]; typed: Record<string, string> };

export type Waiting = Sending & {
  id: string;
  member: string;
  /** When it was written, in phone time. */
  since: number;
  /** Its author has seen how old it is, and still wants it sent. */
  sure?: true;
  /** Why it waits for its author to decide. */
  held?: { why: 'too-old' } | { why: 'refused'; said: string };
};

const prefix = 'room.outbox.';

const isWaiting = (value: unknown): value is Waiting =>
  typeof value === 'object' && value !== null && 'id' in value && 'member' in value && 'since' in value;

const read = (text: string | null | undefined): Waiting | undefined => {
  try {
    const value: unknown = JSON.parse(text ?? 'null');
    return isWaiting(value) ? value : undefined;
  } catch {
    return undefined;
  }
};

/**
 * The unsent lines in this browser, shared by its tabs. Each has its own storage key, so that tabs do not overwrite one
 * another.
 */
export class WaitingLines {
  /** Lines that the browser refused to store: they last as long as the tab. */
  readonly #unkept = new Map<string, Waiting>();

  all(): Waiting[] {
    const kept = remember.names(prefix).flatMap((name) => read(remember.get(name)) ?? []);
    const fresh = kept.filter(({ id }) => !this.#unkept.has(id));
    return [...fresh, ...this.#unkept.values()].sort((a, b) => a.since - b.since);
  }

  put(item: Waiting): void {
    const text = JSON.stringify(item);
    remember.set(prefix + item.id, text);
    if (remember.get(prefix + item.id) === text) this.#unkept.delete(item.id);
    else this.#unkept.set(item.id, item);
  }

  drop(id: string): void {
    this.#unkept.delete(id);
    remember.set(prefix + id, undefined);
  }

  /** Reports when another tab adds, changes or removes a line. */
  listen(heard: (id: string, item: Waiting | undefined) => void, until: AbortSignal): void {
    const changed = ({ key, newValue }: StorageEvent) => {
      if (key?.startsWith(prefix) === true) heard(key.slice(prefix.length), read(newValue));
    };
    addEventListener('storage', changed, { signal: until });
  }
}
