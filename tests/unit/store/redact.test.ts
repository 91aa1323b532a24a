import { describe, expect, it } from 'vitest';
import { checkStates } from '../../../src/store/states/checkStates.ts';
import { streamNo } from '../../../src/studio/ids.ts';
import { isStored } from '../../helpers/store/isStored.ts';
import { openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

describe('redacting a note', () => {
  it('takes the text out of log, answers and bytes; the entry stays and says so', async () => {
    const room = await openRoomWithGullGrey();
    const note = 'the xylophone of “somebody” is in here';
    await room.say(1, `/reading bucket:gg gravity:1.44 stirred:yes note:"${note}"`);
    await room.keeper(1, '/reading bucket:gg gravity:1.45 stirred:yes note:"left alone"');
    const before = await room.store.books.read(room.studio, (book) => book.bucket(streamNo(1)));
    const log = await room.keeper(2, '/bucket log bucket:gg');
    expect(log.reasons.join()).toContain('xylophone');
    const done = await room.keeper(3, '/redact entry:1-2');
    expect(done).toMatchObject({ ok: true, private: false, data: { entry: '1-2' } });
    expect(JSON.stringify(done)).not.toContain('xylophone');
    await room.store.erased();
    expect(await isStored(room.store.file, 'xylophone')).toBe(false);
    expect(await isStored(room.store.file, 'left alone')).toBe(true);
    const after = await room.keeper(4, '/bucket log bucket:gg');
    expect(after.reasons[1]).toMatch(/Wren read gravity 1\.44.*note removed by a keeper/);
    expect(after.data['entries']).toMatchObject([
      { note: 'left alone' },
      { entry: '1-2', noteRemoved: true },
      {},
    ]);
    expect(await room.store.books.read(room.studio, (book) => book.bucket(streamNo(1)))).toEqual(before);
    expect(await checkStates(room.store.file)).toMatchObject({ differing: [] });
    expect(room.bugs).toEqual([]);
  });

  it('is for keepers, and of entries that have a note, once', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/stirred bucket:gg note:hm');
    expect((await room.say(2, '/redact entry:1-2')).kind).toBe('refusal');
    expect((await room.keeper(2, '/redact entry:1-1')).kind).toBe('refusal');
    expect((await room.keeper(2, '/redact entry:9-9')).kind).toBe('refusal');
    expect((await room.keeper(2, '/redact entry:1-2')).kind).toBe('answer');
    expect((await room.keeper(2, '/redact entry:1-2')).kind).toBe('refusal');
    expect((await room.say(3, '/undo entry:1-2')).kind).toBe('answer');
  });

  it('leaves the same words of others where they are', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/stirred bucket:gg note:"smelled a little"');
    await room.keeper(1, '/stirred bucket:gg note:"smelled a little"');
    await room.keeper(2, '/redact entry:1-2');
    await room.store.erased();
    const log = await room.keeper(3, '/bucket log bucket:gg');
    expect(log.data['entries']).toMatchObject([{ note: 'smelled a little' }, { noteRemoved: true }, {}]);
  });
});
