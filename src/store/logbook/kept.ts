import type { Turns } from '../engine/turns.ts';

/** Small things that the program itself must remember between starts. */
export interface Kept {
  get(name: string): Promise<string | undefined>;
  set(name: string, value: string): Promise<void>;
}

export class StoredKept implements Kept {
  readonly #turns: Turns;

  constructor(turns: Turns) {
    this.#turns = turns;
  }

  get(name: string): Promise<string | undefined> {
    return this.#turns.read(async ({ db }) => {
      const row = await db.selectFrom('kept').where('name', '=', name).select('value').executeTakeFirst();
      return row?.value;
    });
  }

  set(name: string, value: string): Promise<void> {
    return this.#turns.write(async ({ db }) => {
      await db
        .insertInto('kept')
        .values({ name, value })
        .onConflict((conflict) => conflict.column('name').doUpdateSet({ value }))
        .execute();
      return { keep: true, value: undefined };
    });
  }
}
