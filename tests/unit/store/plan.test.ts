import { expect, it } from 'vitest';
import { hours, instant, later, type MemberId, type StudioId } from '../../../src/studio/ids.ts';
import type { StudioEvent } from '../../../src/studio/settings/studio.ts';
import { openTestStore, settableClock } from '../../helpers/store/storeFile.ts';

const now = settableClock().now();

it('plans the mornings of those studios that asked for them, and finds nothing wrong with the others', async () => {
  const store = await openTestStore();
  const open = async (name: string): Promise<[StudioId, MemberId]> => {
    const studio = await store.people.studioOf('discord', name, name);
    return [studio, await store.people.memberOf(studio, 'discord', 'wren', 'Wren')];
  };
  const [asked, wren] = await open('one');
  const [other, tove] = await open('other');
  const set = (studio: StudioId, by: MemberId, event: StudioEvent) =>
    store.books.writeOnce(studio, JSON.stringify(event), async (book) => {
      await book.logStudio(event, { at: now, loggedAt: now, by });
      return { keep: true, value: null };
    });
  await set(asked, wren, { kind: 'keeper', member: wren, keeper: true });
  await set(asked, wren, { kind: 'morning', morning: { at: 9 * 60, by: 'direct' } });
  await set(other, tove, { kind: 'keeper', member: tove, keeper: true });
  // Two weeks on, all that was planned at first is over.
  const then = later(now, hours(14 * 24));
  await store.reminders.plan(then);
  const due = await store.reminders.claim(later(then, hours(24)), instant(then + hours(25)), 50);
  expect(due.filter(({ dueAt }) => dueAt > then).map(({ studio }) => studio)).toEqual([asked]);
});
