import { describe, expect, it, onTestFinished } from 'vitest';
import { startReminders } from '../../../src/reminders/startReminders.ts';
import { openStore } from '../../../src/store/openStore.ts';
import { en } from '../../../src/words/en.ts';
import { handbook } from '../../helpers/handbook.ts';
import { recordingVoice } from '../../helpers/room/reminderRoom.ts';
import { openReminderStudio } from '../../helpers/room/reminderStudio.ts';
import { settableClock, newLogbook } from '../../helpers/store/storeFile.ts';

const minute = 60_000;
const hour = 60 * minute;
/** 22:30 by UTC, within the usual quiet hours. */
const evening = Date.UTC(2026, 2, 1, 22, 30);

const openDosed = async () => {
  const clock = settableClock();
  const store = await openStore(await newLogbook(), { clock });
  const room = await openReminderStudio(store, '1');
  const voice = recordingVoice();
  const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };
  const open = () =>
    startReminders(
      { queue: store.reminders, books: store.books, words: en, handbook, clock, log: quiet, voices: [voice] },
      { every: 1e8 },
    );
  let reminders = await open();
  onTestFinished(async () => {
    await reminders.stop();
    await store.close();
  });
  const member = (name: string) => store.people.memberOf(room.studio, 'terminal', name, name);
  const [tove, wren] = [await member('Tove'), await member('Wren')];
  await room.say(tove, evening - hour, '/studio set zone:UTC', 'keeper');
  const window = 'volume:15l gravity:1.42-1.46 seconds:12-16 cup:ford4';
  await room.say(tove, evening - hour, `/bucket add name:"Gull Grey" ${window}`, 'keeper');
  await room.say(wren, evening - minute, '/reading bucket:1 gravity:1.44 within:0.01 seconds:9 stirred:yes');
  await room.say(wren, evening, '/added bucket:1 what:flocculant amount:4ml');
  const tick = async (at: number) => {
    clock.set(at);
    await reminders.tick();
    return voice.said.length;
  };
  const restart = async () => {
    await reminders.stop();
    reminders = await open();
  };
  return { ...room, wren, tove, voice, tick, restart };
};

describe('a member who asks to be told in ten minutes', () => {
  it('is told once, in quiet hours too, though the program starts anew meanwhile', async () => {
    const { say, wren, voice, tick, restart } = await openDosed();
    await say(wren, evening, '/remind me bucket:1 in:10min');
    expect(await tick(evening + 10 * minute - 1)).toBe(0);
    await restart();
    expect(await tick(evening + 10 * minute)).toBe(1);
    await restart();
    expect(await tick(evening + 20 * minute)).toBe(1);
    const [told] = voice.said;
    expect(told?.to).toBe(wren);
    expect(JSON.stringify(told?.reply.title)).toMatch(/Gull Grey.*the time is up/);
    expect(told?.reply.actions?.map(({ line }) => line)).toEqual([
      expect.stringMatching(/^\/reading bucket:1/),
      '/remind later reminder:asked-1 for:10min',
      '/remind done reminder:asked-1',
    ]);
  });

  it('is told at the later time when they ask again, and again after they were told', async () => {
    const { say, wren, tick } = await openDosed();
    await say(wren, evening, '/remind me bucket:1 in:10min');
    await say(wren, evening + 5 * minute, '/remind me bucket:1 in:10min');
    expect(await tick(evening + 10 * minute)).toBe(0);
    expect(await tick(evening + 15 * minute)).toBe(1);
    await say(wren, evening + 16 * minute, '/remind me bucket:1 in:10min');
    expect(await tick(evening + 26 * minute)).toBe(2);
  });

  it('is not told when they looked already, when the bucket is gone, or when they think better of it', async () => {
    const { say, wren, tove, tick } = await openDosed();
    await say(wren, evening, '/remind me bucket:1 in:10min');
    await say(wren, evening + 9 * minute, '/reading bucket:1 seconds:14 stirred:yes');
    expect(await tick(evening + 10 * minute)).toBe(0);
    await say(wren, evening + 11 * minute, '/remind me bucket:1 in:10min');
    await say(wren, evening + 12 * minute, '/remind done reminder:asked-1');
    expect(await tick(evening + 21 * minute)).toBe(0);
    await say(wren, evening + 22 * minute, '/remind me bucket:1 in:10min');
    await say(tove, evening + 23 * minute, '/bucket retire bucket:1', 'keeper');
    expect(await tick(evening + hour)).toBe(0);
  });

  it('is not told half a day later, when nobody stands at the bucket any more', async () => {
    const { say, wren, tick } = await openDosed();
    await say(wren, evening, '/remind me bucket:1 in:10min');
    expect(await tick(evening + 12 * hour + 10 * minute)).toBe(0);
  });

  it('sees it on their round until they say that it is done', async () => {
    const { say, wren, tick } = await openDosed();
    await say(wren, evening, '/remind me bucket:1 in:10min');
    const items = async (at: number) =>
      (JSON.parse(await say(wren, at, '/round')) as { items: object[] }).items;
    expect(await items(evening)).toEqual([]);
    await tick(evening + 10 * minute);
    expect(await items(evening + 11 * minute)).toEqual([{ kind: 'reminder' }]);
    await say(wren, evening + 12 * minute, '/remind done reminder:asked-1');
    expect(await items(evening + 13 * minute)).toEqual([]);
  });
});
