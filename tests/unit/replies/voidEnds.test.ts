import { describe, expect, it } from 'vitest';
import { openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

const verdict = (answer: { data: Record<string, unknown> }) =>
  answer.data['verdict'] as Record<string, unknown>;
const sureOf = (answer: { data: Record<string, unknown> }) =>
  verdict(answer)['sure'] as { gravity: number; flow: number; both: number };

/** What ends all that was known, and then all that has to be done before it can be weighed. */
const ends: [what: string, lines: string[], after: string[]][] = [
  [
    'a cake was felt',
    ['/reading bucket:gg seen:cake'],
    ['/stirred bucket:gg with:mixer seen:cake-gone minutes:5'],
  ],
  ['lumps were sieved out', ['/reading bucket:gg seen:lumps', '/sieved bucket:gg'], ['/stirred bucket:gg']],
  [
    'it froze, and a keeper released it',
    ['/bucket hold bucket:gg cause:frozen why:frost', '/bucket release bucket:gg'],
    ['/sieved bucket:gg', '/stirred bucket:gg'],
  ],
  ['ice was seen in it', ['/reading bucket:gg seen:ice'], ['/sieved bucket:gg', '/stirred bucket:gg']],
  [
    'something got into it, and a keeper released it',
    ['/bucket hold bucket:gg cause:contaminated why:"blue slip"', '/bucket release bucket:gg'],
    ['/stirred bucket:gg'],
  ],
];

const known = async (): Promise<GlazeRoom> => {
  const room = await openRoomWithGullGrey();
  await room.say(1, '/reading bucket:gg gravity:1.44 within:0.005 seconds:14 stirred:yes');
  expect(sureOf(await room.say(2, '/water-or-stir bucket:gg')).gravity).toBeGreaterThan(0.95);
  return room;
};

describe.each(ends)('once %s', (_what, lines, after) => {
  it('is known no better than a bucket that nobody has measured, and a weighing is asked for', async () => {
    const stranger = await openRoomWithGullGrey();
    const unknown = sureOf(await stranger.keeper(5, '/water-or-stir bucket:gg'));
    const room = await known();
    let minute = 3;
    for (const line of lines) expect(await room.keeper(minute++, line)).toMatchObject({ ok: true });
    const ended = sureOf(await room.keeper(minute, '/water-or-stir bucket:gg'));
    expect(ended.gravity).toBeCloseTo(unknown.gravity, 2);
    expect(ended.both).toBeCloseTo(unknown.both, 2);
    for (const line of after) expect(await room.keeper(minute++, line)).toMatchObject({ ok: true });
    const asked = await room.say(minute, '/water-or-stir bucket:gg');
    expect(verdict(asked)).toMatchObject({ step: 'measure', rule: 'void' });
    expect((verdict(asked)['asks'] as string[])[0]).toBe('weight');
    // One weighing and one cup time bring it back.
    const again = await room.say(
      minute + 1,
      '/reading bucket:gg gravity:1.44 within:0.005 seconds:14 stirred:yes',
    );
    expect(verdict(again)).toMatchObject({ step: 'use' });
  });

  it('nothing shows what was read before as what it is now', async () => {
    const room = await known();
    let minute = 3;
    for (const line of [...lines, ...after]) await room.keeper(minute++, line);
    const asked = await room.keeper(minute, '/water-or-stir bucket:gg');
    expect(verdict(asked)).toMatchObject({
      gravity: { value: 1.44, believed: false },
      gravityBand: null,
      predicted: null,
      flow: null,
    });
    expect(asked.reasons.join(' ')).not.toMatch(/Weighed |gravity should be/);
    for (const line of [
      '/water-or-stir bucket:gg',
      '/bucket list',
      '/bucket show bucket:gg',
      '/round',
      '/ask question:"is gull grey ready"',
      '/batch correct bucket:gg by:water',
      '/dose bucket:gg',
      '/dip time bucket:gg thickness:0.8mm',
    ]) {
      const { title, facts, data } = await room.keeper(minute, line);
      for (const { label, text } of facts) {
        if (label === 'Last reading') expect(text).toMatch(/from before; no longer counts/);
        else expect(`${label}: ${text}`).not.toMatch(/1\.44|715 g/);
      }
      expect(title).not.toMatch(/1\.44|Use it/);
      expect(data['doseMl'] ?? 0).toBe(0);
    }
    const water = await room.keeper(minute, '/ask question:"how much water brings gull grey to 1.40"');
    expect(water.title).toMatch(/[Mm]easure it/);
  });
});

describe('after frost', () => {
  it('is sieved, stirred and weighed, in that order, before it is used', async () => {
    const room = await known();
    await room.keeper(3, '/bucket hold bucket:gg cause:frozen why:frost');
    expect(verdict(await room.say(4, '/water-or-stir bucket:gg'))).toMatchObject({ step: 'on-hold' });
    const released = await room.keeper(5, '/bucket release bucket:gg');
    expect(released.title).toMatch(/It was frozen\. Once it has thawed, sieve it first/);
    expect(released.facts.map(({ text }) => text).join()).toMatch(/none since it froze/);
    expect((await room.say(6, '/sieved bucket:gg')).title).toMatch(/Stir it first/);
    expect((await room.say(7, '/stirred bucket:gg')).title).toMatch(/Now measure it, weight and flow/);
    // A look alone does not do.
    expect(verdict(await room.say(8, '/reading bucket:gg look:right seconds:14'))).toMatchObject({
      step: 'measure',
    });
    const weighed = await room.say(9, '/reading bucket:gg gravity:1.44 within:0.005 seconds:14');
    expect(verdict(weighed)).toMatchObject({ step: 'use' });
  });
});
