import type { Turns } from '../engine/turns.ts';

/** Settings that the program remembers between starts. */
export interface ProgramSettings {
  get(name: string): Promise<string | undefined>;
  set(name: string, value: string): Promise<void>;
  /** The value; a new one when there is none yet. Of several processes that ask at once, each gets the same. */
  getOrSet(name: string, fresh: string): Promise<string>;
}

export class StoredSettings implements ProgramSettings {
  readonly #turns: Turns;

  constructor(turns: Turns) {
    this.#turns = turns;
  }

  get(name: string): Promise<string | undefined> {
    return this.#turns.read('directory', async ({ db }) => {
      const row = await db.selectFrom('kept').where('name', '=', name).select('value').executeTakeFirst();
      return row?.value;
    });
  }

  getOrSet(name: string, fresh: string): Promise<string> {
    return this.#turns.write('directory', async ({ db }) => {
      await db
        .insertInto('kept')
        .values({ name, value: fresh })
        .onConflict((conflict) => conflict.doNothing())
        .execute();
      const { value } = await db
        .selectFrom('kept')
        .where('name', '=', name)
        .select('value')
        .executeTakeFirstOrThrow();
      return { keep: true, value };
    });
  }

  set(name: string, value: string): Promise<void> {
    return this.#turns.write('directory', async ({ db }) => {
      await db
        .insertInto('kept')
        .values({ name, value })
        .onConflict((conflict) => conflict.column('name').doUpdateSet({ value }))
        .execute();
      return { keep: true, value: undefined };
    });
  }
}
