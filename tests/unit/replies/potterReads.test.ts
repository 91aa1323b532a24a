import { describe, expect, it } from 'vitest';
import { openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

const hour = 60;

describe('an answer at the bucket', () => {
  it('says “stir again” in its body, with every “use it” of a glaze that settles fast', async () => {
    const room = await openRoomWithGullGrey(['rest', '20min']);
    const answer = await room.say(1, '/reading bucket:gg gravity:1.44 within:0.005 seconds:14 stirred:yes');
    expect(answer.title).toMatch(/Use it.*It settles fast/);
    expect(answer.facts).toContainEqual({
      label: 'Stir again',
      text: 'before each piece, and at least every 20 min: it settles fast',
    });
    const slow = await openRoomWithGullGrey(['rest', '4h']);
    const usual = await slow.say(1, '/reading bucket:gg gravity:1.44 within:0.005 seconds:14 stirred:yes');
    expect(usual.facts.map(({ label }) => label)).toEqual(['Gravity', 'Flow', 'Last stir']);
  });

  it('tells the age of what was not read just now', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 within:0.005 seconds:14 stirred:yes');
    const now = await room.say(30, '/water-or-stir bucket:gg');
    expect(now.facts.map(({ text }) => text).slice(0, 2)).toEqual([
      '1.440 ± 0.005 (window 1.42 to 1.46)',
      'right',
    ]);
    const later = await room.say(1 + 50 * hour, '/water-or-stir bucket:gg');
    expect(later.facts[0]?.text).toMatch(/1\.440 ± 0\.005.*, 2 days ago$/);
    expect(later.facts[1]?.text).toBe('right, 2 days ago');
  });

  it('sends a member to a keeper without telling of the jar that the keeper tries it in', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/stirred bucket:gg minutes:6');
    for (const minute of [2, 2])
      await room.say(minute, '/reading bucket:gg gravity:1.44 within:0.002 seconds:24');
    const member = await room.say(3, '/water-or-stir bucket:gg');
    expect(member.title).toMatch(/Thick, but not for lack of water\. Ask a keeper/);
    expect(member.reasons.join(' ')).not.toMatch(/jar/);
    expect((await room.keeper(3, '/water-or-stir bucket:gg')).reasons.join(' ')).toMatch(/jar/);
  });
});
