import { describe, expect, it, onTestFinished } from 'vitest';
import { startReminders } from '../../../src/reminders/startReminders.ts';
import { replyJson } from '../../../src/terminal/plainReply.ts';
import { openStore } from '../../../src/store/openStore.ts';
import { instant } from '../../../src/studio/ids.ts';
import { handbook } from '../../helpers/handbook.ts';
import { en } from '../../../src/words/en.ts';
import { recordingVoice } from '../../helpers/room/reminderRoom.ts';
import { openReminderStudio } from '../../helpers/room/reminderStudio.ts';
import { settableClock, newLogbook } from '../../helpers/store/storeFile.ts';

const minute = 60_000;
const day = 1440 * minute;
/** 14:00, outside quiet hours. */
const start = Date.UTC(2026, 2, 1, 14);

const openRoom = async () => {
  const clock = settableClock();
  const store = await openStore(await newLogbook(), { clock });
  const room = await openReminderStudio(store, '1');
  const member = (name: string) => store.people.memberOf(room.studio, 'terminal', name, name);
  const voice = recordingVoice();
  const quiet = { info: () => undefined, warn: () => undefined, error: () => undefined };
  const reminders = await startReminders(
    { queue: store.reminders, books: store.books, words: en, handbook, clock, log: quiet, voices: [voice] },
    { every: 1e8 },
  );
  onTestFinished(async () => {
    await reminders.stop();
    await store.close();
  });
  const [tove, wren] = [await member('Tove'), await member('Wren')];
  await room.say(tove, start, '/studio set zone:UTC', 'keeper');
  await room.say(tove, start, '/bucket add name:"Gull Grey" volume:15l gravity:1.42-1.46', 'keeper');
  const read = (who: typeof wren, at: number, gravity: number) =>
    room.say(who, at, `/reading bucket:1 gravity:${gravity} within:0.005 stirred:yes`);
  const tick = (at: number) => {
    clock.set(at);
    return reminders.tick();
  };
  return { ...room, tove, wren, voice, read, tick };
};

/** Read at 1.44, and two days later twice at 1.40. */
const watered = async (by: 'tove' | 'wren') => {
  const room = await openRoom();
  await room.read(room.wren, start, 1.44);
  await room.read(room[by], start + 2 * day, 1.4);
  await room.read(room[by], start + 2 * day + 3 * minute, 1.4);
  return room;
};

describe('a change that nobody logged', () => {
  it('is told to the keeper, in private, with what to log', async () => {
    const { voice, tick, tove } = await watered('wren');
    await tick(start + 2 * day + 4 * minute);
    expect(voice.said.map(({ to }) => to)).toEqual([tove]);
    const [told] = voice.said;
    if (!told) throw new Error('nothing was said');
    const shown = JSON.parse(
      JSON.stringify(replyJson(told.reply, { now: instant(start + 2 * day), zone: 'UTC' })),
    );
    expect(shown).toMatchObject({
      private: true,
      title: expect.stringMatching(
        /^Gull Grey: About 1\.5 ± 0\.4 l of water went in between .*, and nobody wrote it down\.$/,
      ),
      actions: [
        { line: expect.stringMatching(/^\/added bucket:1 what:water amount:1500ml when:/) },
        { line: '/remind done reminder:1-3-unlogged' },
        { line: '/remind not-mine reminder:1-3-unlogged' },
      ],
      data: { bucket: 1, unlogged: { what: 'water-in', between: ['1-2', '1-3'] } },
    });
    expect(JSON.stringify(shown)).not.toContain('Wren');
    await tick(start + 3 * day);
    expect(voice.said).toHaveLength(1);
  });

  it('is told when it comes to light, though the readings were taken long before', async () => {
    const { say, wren, tove, voice, tick } = await openRoom();
    const logged = start + 12 * day;
    for (const [when, gravity] of [
      ['2026-03-01 14:00', 1.44],
      ['2026-03-03 14:00', 1.4],
      ['2026-03-03 14:03', 1.4],
    ] as const)
      await say(wren, logged, `/reading bucket:1 gravity:${gravity} within:0.005 stirred:yes when:"${when}"`);
    await tick(logged + minute);
    expect(voice.said.map(({ to }) => to)).toEqual([tove]);
  });

  it('is not told to a keeper who took the second reading: the answer to it said so', async () => {
    const { voice, tick } = await watered('tove');
    await tick(start + 2 * day + 4 * minute);
    expect(voice.said).toEqual([]);
  });

  it('is not told when it was logged meanwhile, and is told when that is undone', async () => {
    const { voice, tick, say, wren } = await watered('wren');
    const at = start + 2 * day + 3 * minute;
    const logged = await say(wren, at, '/added bucket:1 what:water amount:1.5l when:"1 day ago"');
    await tick(at + minute);
    expect(voice.said).toEqual([]);
    const { entry } = JSON.parse(logged) as { entry: string };
    await say(wren, at + 2 * minute, `/undo entry:${entry}`);
    await tick(at + 3 * minute);
    expect(voice.said).toHaveLength(1);
  });

  it('waits out the night', async () => {
    const room = await openRoom();
    await room.read(room.wren, start, 1.44);
    const late = start + 9 * 60 * minute;
    await room.read(room.wren, late, 1.4);
    await room.read(room.wren, late + 3 * minute, 1.4);
    await room.tick(late + 4 * minute);
    expect(room.voice.said).toEqual([]);
    // 08:00, when quiet hours end.
    await room.tick(start + 18 * 60 * minute);
    expect(room.voice.said).toHaveLength(1);
  });
});
