import { setTimeout as pause } from 'node:timers/promises';
import { sql, type Transaction } from 'kysely';
import type pg from 'pg';
import type { StudioId } from '../../../studio/ids.ts';
import type { Tables } from '../../migrations/tables.ts';
import { newClient } from './pool.ts';

const channel = 'glaze_room';
const again = 1_000;

/** Sent by the server when this transaction commits. */
export const announce = async (db: Transaction<Tables>, studio: StudioId): Promise<void> => {
  await sql`select pg_notify(${channel}, ${studio})`.execute(db);
};

/**
 * Listens on a connection of its own, which is opened when somebody wants to hear. While it is lost nothing is heard:
 * whoever listens has to look now and then as well.
 */
export class Announcements {
  readonly #address: string;
  readonly #listeners = new Map<() => void, StudioId>();
  #client: pg.Client | undefined;
  #isGoing = false;
  #closed = false;

  constructor(address: string) {
    this.#address = address;
  }

  hear(studio: StudioId, listener: () => void): () => void {
    this.#listeners.set(listener, studio);
    if (!this.#isGoing) void this.#stayConnected();
    this.#isGoing = true;
    return () => void this.#listeners.delete(listener);
  }

  async close(): Promise<void> {
    this.#closed = true;
    await this.#client?.end().catch(() => undefined);
  }

  async #stayConnected(): Promise<void> {
    while (!this.#closed) {
      await this.#connection().catch(() => undefined);
      if (!this.#closed) await pause(again, undefined, { ref: false });
    }
  }

  /** One connection until it ends. */
  async #connection(): Promise<void> {
    const client = newClient(this.#address);
    const ended = new Promise<void>((resolve) => {
      client.on('end', resolve);
      client.on('error', () => resolve());
    });
    client.on('notification', ({ payload }) => this.#tell(payload));
    try {
      await client.connect();
      this.#client = client;
      await client.query(`listen ${channel}`);
      // Something may have been announced while nobody listened.
      this.#tell();
      if (!this.#closed) await ended;
    } finally {
      this.#client = undefined;
      await client.end().catch(() => undefined);
    }
  }

  #tell(about?: string): void {
    for (const [listener, studio] of this.#listeners) if (about === undefined || about === studio) listener();
  }
}
