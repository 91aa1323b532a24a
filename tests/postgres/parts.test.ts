import { describe, expect, it } from 'vitest';
import { newDatabase, queryAt } from '../helpers/postgres/databases.ts';
import { openTestStore } from '../helpers/store/storeFile.ts';

const taken = { name: 'StoreProblem', kind: 'part-taken' };
const quietly = () => undefined;
const waitingIn = async (address: string) =>
  (await queryAt(address, "select 1 from pg_locks where locktype = 'advisory' and not granted")).length;

describe('what several processes share of a platform', () => {
  it('is taken by one of them as a whole', async () => {
    const address = await newDatabase('empty_logbook');
    const [one, other] = [await openTestStore({ file: address }), await openTestStore({ file: address })];
    const whole = await one.takePart('all', quietly);
    await expect(other.takePart('all', quietly)).rejects.toMatchObject(taken);
    await expect(other.takePart([0, 1], quietly)).rejects.toMatchObject(taken);
    await whole.release();
    await (await other.takePart('all', quietly)).release();
  });

  it('is taken in parts that do not overlap', async () => {
    const address = await newDatabase('empty_logbook');
    const [one, other] = [await openTestStore({ file: address }), await openTestStore({ file: address })];
    const parts = [await one.takePart([0, 1], quietly), await other.takePart([2, 3], quietly)];
    await expect(other.takePart([1], quietly)).rejects.toMatchObject(taken);
    await expect(other.takePart('all', quietly)).rejects.toMatchObject(taken);
    for (const part of parts) await part.release();
  });

  it('is, of a studio’s room, one’s after the other’s, and beside the room of another studio', async () => {
    const address = await newDatabase('empty_logbook');
    const [one, other] = [await openTestStore({ file: address }), await openTestStore({ file: address })];
    const studios = [
      await one.people.studioOf('terminal', 'here', 'Wrackline'),
      await one.people.studioOf('terminal', 'there', 'Another'),
    ] as const;
    const first = await one.takePart({ room: studios[0] }, quietly);
    await (await other.takePart({ room: studios[1] }, quietly)).release();
    const order: string[] = [];
    const next = other.takePart({ room: studios[0] }, quietly).then((room) => {
      order.push('next');
      return room.release();
    });
    await expect.poll(() => waitingIn(address)).toBe(1);
    order.push('first');
    await first.release();
    await next;
    expect(order).toEqual(['first', 'next']);
  });

  it('stays taken when the connection was lost, unless another process was quicker', async () => {
    const address = await newDatabase('empty_logbook');
    const [one, other] = [await openTestStore({ file: address }), await openTestStore({ file: address })];
    let tell: (why: unknown) => void = quietly;
    const lost = new Promise<unknown>((resolve) => (tell = resolve));
    await one.takePart('all', tell);
    await queryAt(
      address,
      `select pg_terminate_backend(pid) from pg_locks where locktype = 'advisory' and database =
        (select oid from pg_database where datname = current_database())`,
    );
    const part = await other.takePart('all', quietly);
    expect(await lost).toMatchObject(taken);
    await part.release();
  });
});
