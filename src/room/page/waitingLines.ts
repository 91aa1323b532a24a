import { remember } from './dom.ts';

export type Sending = { line: string } | { path: string[]; typed: Record<string, string> };

export type Waiting = Sending & {
  id: string;
  member: string;
  /** When it was written, by the phone's clock. */
  since: number;
  /** Its writer has seen how old it is, and wants it sent. */
  sure?: true;
  /** Why it is not sent until its writer says so. */
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

/** The lines that wait in this browser, the same in all its tabs: each under a name of its own, so that no tab overwrites another's. */
export class WaitingLines {
  /** What the browser refused to keep is gone with the tab. */
  readonly #unkept = new Map<string, Waiting>();

  /** In the order in which they were written. */
  all(): Waiting[] {
    const kept = remember.names(prefix).flatMap((name) => read(remember.get(name)) ?? []);
    return [...kept, ...this.#unkept.values()].sort((a, b) => a.since - b.since);
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

  /** Tells what other tabs do with a line: put it here, change it, or take it out. */
  listen(heard: (id: string, item: Waiting | undefined) => void, until: AbortSignal): void {
    const changed = ({ key, newValue }: StorageEvent) => {
      if (key?.startsWith(prefix) === true) heard(key.slice(prefix.length), read(newValue));
    };
    addEventListener('storage', changed, { signal: until });
  }
}
