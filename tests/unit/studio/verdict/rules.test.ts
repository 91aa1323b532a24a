import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../../helpers/discord/answerSchemas.ts';
import { openGlazeRoom, openRoomWithGullGrey } from '../../../helpers/room/glazeRoom.ts';

const hours = 60;
const days = 24 * hours;
const good = '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes';
const ask = '/water-or-stir bucket:gg';
const text = (lines: string[]) => lines.join('\n');

describe('first: on hold, contaminated or frozen', () => {
  it.each(['contaminated', 'frozen', 'hazard', 'other'])(
    'a bucket held as %s is neither used nor changed: who, why and since when are said',
    async (cause) => {
      const room = await openRoomWithGullGrey();
      await room.say(10, good);
      await room.keeper(20, `/bucket hold bucket:gg why:"rutile got in" cause:${cause}`, 'Tove Lind');
      const answer = await room.say(50, ask);
      expect(verdictOf(answer).step).toBe('on-hold');
      expect(answer.title).toMatch(/hold/i);
      expect(text(answer.reasons)).toContain('rutile got in');
      expect(text(answer.reasons)).toContain('Tove Lind');
      expect(text(answer.reasons)).toContain('30 min ago');
      expect(answer.dont.length).toBeGreaterThan(0);
    },
  );

  it('comes before a cake, lumps, a long rest and a gravity that is out', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(10, '/reading bucket:gg gravity:1.5 seconds:14 stirred:yes seen:lumps');
    await room.say(11, '/stirred bucket:gg seen:cake');
    await room.keeper(20, '/bucket hold bucket:gg why:frozen');
    expect(verdictOf(await room.say(9 * hours, ask)).step).toBe('on-hold');
  });

  it('a released bucket is answered for again', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(10, good);
    await room.keeper(20, '/bucket hold bucket:gg why:"let me look"');
    await room.keeper(30, '/bucket release bucket:gg');
    expect(verdictOf(await room.say(31, ask)).step).toBe('use');
  });

  it('a retired bucket is not used', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(10, good);
    await room.keeper(20, '/bucket retire bucket:gg');
    expect(verdictOf(await room.say(21, '/water-or-stir bucket:1')).step).toBe('on-hold');
  });
});

describe('second: what is settled, lumpy or skinned over', () => {
  it('a settled cake is scraped up and power-mixed before anything else', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(10, '/reading bucket:gg gravity:1.36 seconds:10 stirred:yes seen:cake');
    expect(verdictOf(answer)).toMatchObject({ step: 'stir', gravity: { believed: false } });
    expect(answer.title).toMatch(/scrape.*power-mix/i);
    expect(text(answer.cautions)).toMatch(/GFCI/);
    expect(answer.actions[0]?.line).toContain('with:mixer');
  });

  it.each([
    ['/stirred bucket:gg seen:cake-gone', 'measure'],
    ['/stirred bucket:gg seen:none', 'measure'],
    [good, 'use'],
  ])('a cake stays a cake until it is reported gone, and is measured after that: %s', async (gone, step) => {
    const room = await openRoomWithGullGrey();
    await room.say(10, good);
    await room.say(20, '/stirred bucket:gg seen:cake');
    await room.say(25, '/stirred bucket:gg minutes:5');
    expect(verdictOf(await room.say(26, ask)).step).toBe('stir');
    expect(verdictOf(await room.say(30, gone)).step).toBe(step);
  });

  it.each(['lumps', 'skin'])('%s are sieved out, through the mesh of the bucket', async (what) => {
    const room = await openRoomWithGullGrey(['mesh', '60']);
    const answer = await room.say(10, `/reading bucket:gg gravity:1.44 seconds:14 stirred:yes seen:${what}`);
    expect(verdictOf(answer).step).toBe('sieve');
    expect(text(answer.reasons)).toContain('60');
    // Dried glaze from the rim or tools never goes back into a wet bucket.
    expect(text(answer.reasons)).toMatch(/dried glaze.*next batch/i);
    expect(verdictOf(await room.say(11, '/stirred bucket:gg seen:none')).step).toBe('sieve');
    expect(verdictOf(await room.say(12, '/sieved bucket:gg mesh:60')).step).toBe('measure');
    expect(verdictOf(await room.say(13, good)).step).toBe('use');
  });

  it('a glaze that is never sieved goes to a keeper', async () => {
    const room = await openRoomWithGullGrey(['mesh', 'never']);
    const answer = await room.say(10, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes seen:lumps');
    expect(verdictOf(answer).step).toBe('ask-keeper');
  });

  it('a cake comes before lumps, and both before a rest', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(10, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes seen:lumps');
    expect(verdictOf(await room.say(9 * hours, ask)).step).toBe('sieve');
    await room.say(9 * hours, '/stirred bucket:gg seen:cake');
    expect(verdictOf(await room.say(20 * hours, ask))).toMatchObject({ step: 'stir' });
    expect((await room.say(20 * hours, ask)).title).toMatch(/power-mix/);
  });
});

describe('third: stir first', () => {
  it('a bucket that nobody stirred is stirred first, whatever its gravity looks like', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(10, '/reading bucket:gg gravity:1.36 look:thin');
    expect(verdictOf(answer)).toMatchObject({
      step: 'stir',
      hoursSinceStir: null,
      gravity: { value: 1.36, believed: false },
    });
    expect(answer.title).toMatch(/stir it first/i);
    expect(text(answer.reasons)).toMatch(/1\.36.*not count:/);
    expect(answer.dont.join(' ')).toMatch(/water/);
  });

  it('a reading of a bucket that was not stirred is kept and marked', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(10, '/stirred bucket:gg');
    const answer = await room.say(12, '/reading bucket:gg gravity:1.5 stirred:no');
    expect(verdictOf(answer)).toMatchObject({ step: 'measure', gravity: { value: 1.5, believed: false } });
    const log = await room.say(13, '/bucket log bucket:gg');
    expect(text(log.reasons)).toContain('1.50');
  });

  it('rests as long as its limit, 4 h, and no longer', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(10, good);
    expect(verdictOf(await room.say(10 + 4 * hours, ask)).step).toBe('use');
    const answer = await room.say(10 + 4 * hours + 1, ask);
    expect(verdictOf(answer)).toMatchObject({ step: 'stir', then: 'use' });
    expect(answer.title).toMatch(/stir it first.*don't add water/i);
    expect(text(answer.reasons)).toMatch(/4(\.0)? h/);
  });

  it('rests an hour when the keeper has not said', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, '/bucket add name:Heron nick:h gravity:1.42-1.46 seconds:12-16 cup:ford4');
    await room.say(0, '/reading bucket:h gravity:1.44 seconds:14 stirred:yes');
    expect(verdictOf(await room.say(40, '/water-or-stir bucket:h')).step).toBe('use');
    // A stir lasts 45 minutes, and the dip takes some of them: once more, and then it is used.
    expect(verdictOf(await room.say(41, '/water-or-stir bucket:h'))).toMatchObject({
      step: 'stir',
      then: 'use',
    });
    expect(verdictOf(await room.say(61, '/water-or-stir bucket:h')).step).toBe('stir');
  });

  it('says what is expected after the stir', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(10, '/reading bucket:gg gravity:1.5 seconds:14 stirred:yes');
    expect(verdictOf(await room.say(9 * hours, ask))).toMatchObject({
      step: 'stir',
      // No water on a gravity from another visit.
      then: 'measure',
      asks: ['weight', 'seconds'],
    });
  });

  it('a clock that was set back never gives negative hours', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(120, '/stirred bucket:gg');
    expect(verdictOf(await room.say(30, ask)).hoursSinceStir).toBe(0);
  });

  it('counts the hours since the last stir', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(30, '/stirred bucket:gg');
    expect(verdictOf(await room.say(120, ask)).hoursSinceStir).toBeCloseTo(1.5, 6);
  });
});

describe('fourth: measure', () => {
  it('a stirred bucket without a reading is measured', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(10, '/stirred bucket:gg minutes:3');
    expect(verdictOf(answer)).toMatchObject({ step: 'measure', gravity: null, predicted: null });
  });

  it('looks alone never change the water, nor dose anything', async () => {
    for (const look of ['thin', 'right', 'thick']) {
      const room = await openRoomWithGullGrey();
      const answer = await room.say(10, `/reading bucket:gg look:${look} stirred:yes`);
      const verdict = verdictOf(answer);
      expect(verdict.step).toBe('measure');
      expect([verdict.waterMl, verdict.drawOffMl, verdict.dryGrams, verdict.doseMl]).toEqual(
        Array(4).fill(undefined),
      );
      expect(answer.dont.join(' ')).toMatch(/another bucket, or ask/i);
    }
  });

  it('a reading wears off day by day, and an old one is told with its age', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(10, good);
    await room.say(10 + 7 * days - 1, '/stirred bucket:gg');
    expect(verdictOf(await room.say(10 + 7 * days, ask)).gravity).toMatchObject({ believed: true });
    const old = await room.say(11 + 7 * days, ask);
    expect(verdictOf(old)).toMatchObject({ step: 'measure' });
    expect(text(old.reasons)).toMatch(
      /Weighed 7 days ago\. The chance that gravity and flow are right is \d in 10/,
    );
    const fresh = await openRoomWithGullGrey();
    await fresh.say(10, good);
    await fresh.say(20 * 60, '/stirred bucket:gg look:right');
    const answer = await fresh.say(20 * 60 + 1, ask);
    expect(verdictOf(answer).step).toBe('use');
    expect(answer.title).toMatch(
      /Use it\. It was weighed 20 h ago, and the chance that it is still right is .* in 100\./,
    );
  });

  it('a reading is believed for ten minutes after the stir', async () => {
    for (const [after, believed] of [
      [10, true],
      [11, false],
    ] as const) {
      const room = await openRoomWithGullGrey();
      await room.say(0, '/stirred bucket:gg');
      const verdict = verdictOf(await room.say(after, '/reading bucket:gg gravity:1.44 seconds:14'));
      expect(verdict.gravity?.believed).toBe(believed);
      expect(verdict.step).toBe(believed ? 'use' : 'measure');
    }
  });

  it('water that moved gravity by more than the uncertainty asks for a reading, with the gravity predicted', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(10, '/reading bucket:gg gravity:1.5 seconds:14 stirred:yes');
    const verdict = verdictOf(await room.say(11, '/added bucket:gg what:water amount:450ml'));
    expect(verdict.step).toBe('measure');
    // (15 l · 1.50 + 0.45 l) / 15.45 l
    expect(verdict.predicted?.value).toBeCloseTo(1.48544, 4);
  });

  it('water that went in, however little, is weighed before more does, with the gravity predicted', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(10, '/reading bucket:gg gravity:1.5 seconds:14 stirred:yes');
    const verdict = verdictOf(await room.say(11, '/added bucket:gg what:water amount:100ml'));
    expect(verdict).toMatchObject({ step: 'measure', asks: ['weight', 'seconds'] });
    // (15 l · 1.50 + 0.1 l) / 15.1 l
    expect(verdict.predicted?.value).toBeCloseTo(1.49669, 4);
  });

  it.each(['water', 'dry', 'glaze', 'other', 'draw-off'])(
    'an unknown amount of %s asks for a reading',
    async (what) => {
      const room = await openRoomWithGullGrey();
      await room.say(10, good);
      const verdict = verdictOf(await room.say(11, `/added bucket:gg what:${what}`));
      expect(verdict).toMatchObject({ step: 'measure', predicted: null });
      expect(verdictOf(await room.say(12, good)).step).toBe('use');
    },
  );

  it('a dose of flocculant asks for a new look at the flow only: gravity is believed still', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(10, '/reading bucket:gg gravity:1.44 seconds:10 stirred:yes');
    const answer = await room.say(11, '/added bucket:gg what:flocculant amount:5ml');
    expect(verdictOf(answer)).toMatchObject({
      step: 'measure',
      flow: null,
      gravity: { value: 1.44, believed: true },
    });
    expect(answer.title).toMatch(/flow/);
    expect(verdictOf(await room.say(20, '/reading bucket:gg seconds:14 stirred:yes')).step).toBe('use');
  });

  it('glaze taken out leaves the gravity as it was', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(10, good);
    const verdict = verdictOf(await room.say(11, '/added bucket:gg what:taken amount:4l'));
    expect(verdict).toMatchObject({ step: 'use', gravity: { value: 1.44 } });
  });

  it('a later reading that is not believed and disagrees asks to stir and measure again', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(10, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes');
    const answer = await room.say(40, '/reading bucket:gg gravity:1.5');
    expect(verdictOf(answer)).toMatchObject({ step: 'measure', gravity: { value: 1.5, believed: false } });
    expect(answer.title).toMatch(/stir.*then measure it/i);
    expect(verdictOf(await room.say(41, good)).step).toBe('use');
  });

  it('a reading of which nobody said whether it was stirred asks that, and a press answers it', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(10, '/reading bucket:gg gravity:1.44 seconds:14 note:"hall cup"');
    expect(verdictOf(answer).gravity).toMatchObject({ value: 1.44, believed: false });
    expect(answer.title).toMatch(/Stir it first.* was it stirred\? You didn't say\.$/);
    expect(text(answer.facts.map((fact) => fact.text))).toMatch(/if it was stirred/);
    expect(answer.actions[0]).toEqual({
      label: 'It was stirred to the bottom',
      line: '/reading bucket:1 gravity:1.44 seconds:14 stirred:yes after:2',
    });
    expect(answer.actions.map(({ line }) => line).join('\n')).not.toMatch(/\/stirred/);
    expect(verdictOf(await room.say(10, String(answer.actions[0]?.line))).step).toBe('use');
  });

  it('the press says the moment that was meant, however late it is pressed', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(180, '/reading bucket:gg gravity:1.44 seconds:14 when:"2h ago"');
    const line = String(answer.actions[0]?.line);
    await room.say(185, line);
    const log = JSON.stringify((await room.say(186, '/bucket log bucket:gg')).data);
    const [second, first, setUp] = log.match(/"at":"[^"]+"/g) ?? [];
    expect(second).toBe(first);
    expect(first).not.toBe(setUp);
  });

  it.each(['stirred:no', ''])(
    'a bucket stirred just before, or not at all, is not asked: %s',
    async (said) => {
      const room = await openRoomWithGullGrey();
      if (said === '') await room.say(8, '/stirred bucket:gg minutes:5');
      const answer = await room.say(10, `/reading bucket:gg gravity:1.44 seconds:14 ${said}`);
      expect(answer.title).not.toMatch(/You didn't say/);
      expect(text(answer.actions.map(({ label }) => label))).not.toMatch(/It was stirred/);
    },
  );

  it('a later reading that is not believed but agrees changes nothing, and is not hidden', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(10, '/reading bucket:gg gravity:1.5 seconds:14 stirred:yes');
    const answer = await room.say(40, '/reading bucket:gg gravity:1.49');
    expect(verdictOf(answer)).toMatchObject({ step: 'add-water', gravity: { value: 1.5, believed: true } });
    expect(text(answer.reasons)).toMatch(/1\.49.*not count:/);
  });

  it('a bucket without a window is a keeper’s to set, once it is measured', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, '/bucket add name:Dregs');
    const verdict = verdictOf(await room.say(1, '/reading bucket:dregs gravity:1.5 look:thick stirred:yes'));
    expect(verdict).toMatchObject({ step: 'ask-keeper', window: null });
  });

  it('an uncertainty wider than the window asks to measure better, and says how', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(10, '/reading bucket:gg gravity:1.44 within:0.03 seconds:14 stirred:yes');
    expect(verdictOf(answer).step).toBe('measure');
    expect(answer.title).toMatch(/measure more exactly/i);
    expect(text(answer.reasons)).toMatch(/bigger cup/i);
  });
});

describe('a bucket inside its window within the uncertainty is never told to change its water', () => {
  it.each([1.41, 1.412, 1.42, 1.44, 1.46, 1.468, 1.47])('%s ± 0.01 against 1.42 to 1.46', async (gravity) => {
    const room = await openRoomWithGullGrey();
    const verdict = verdictOf(
      await room.say(1, `/reading bucket:gg gravity:${gravity} seconds:14 stirred:yes`),
    );
    // By hand: with ± 0.01 at 95 %, 1.425 and 1.455 are one standard deviation inside, so 5 in 6 or better.
    expect(verdict.step).toBe(gravity >= 1.425 && gravity <= 1.455 ? 'use' : 'measure');
  });

  it.each([
    [1.408, 'ask-keeper'],
    [1.472, 'add-water'],
  ])('%s ± 0.01 is outside, and the step is %s', async (gravity, step) => {
    const room = await openRoomWithGullGrey();
    const verdict = verdictOf(
      await room.say(1, `/reading bucket:gg gravity:${gravity} seconds:14 stirred:yes`),
    );
    expect(verdict.step).toBe(step);
  });
});

describe('a window so wide that nearly any glaze is in it', () => {
  it('is no reason to use a bucket that nobody weighed', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, '/bucket add name:Heron gravity:1.2-1.7 seconds:5-60 cup:ford4');
    const looked = await room.say(1, '/stirred bucket:Heron look:right');
    expect(verdictOf(looked)).toMatchObject({ step: 'measure', asks: ['weight', 'seconds'] });
  });
});

describe('what is said, not hidden', () => {
  it('cup and finger that disagree', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(1, '/reading bucket:gg gravity:1.44 seconds:14 look:thick stirred:yes');
    expect(verdictOf(answer)).toMatchObject({ step: 'use', flow: 'in' });
    expect(text(answer.reasons)).toMatch(/cup says right, the finger says thick/);
  });

  it.each([
    ['seconds:10 look:thick', /cup says thin, the finger says thick/],
    ['seconds:20 look:thin', /cup says thick, the finger says thin/],
  ])(
    'cup and finger that say the opposite, %s: neither decides, and it is timed again',
    async (said, told) => {
      const room = await openRoomWithGullGrey();
      const answer = await room.say(1, `/reading bucket:gg gravity:1.44 ${said} stirred:yes`);
      expect(verdictOf(answer)).toMatchObject({ step: 'measure', flow: null });
      expect(answer.title).toMatch(
        /^Gull Grey: Cup and finger disagree\. Stir, and time the flow cup again\./,
      );
      expect(text(answer.reasons)).toMatch(told);
      // A timed reading is newer, so an undone finger test no longer counts.
      const again = await room.say(3, '/reading bucket:gg seconds:14 look:right stirred:yes');
      expect(again.title).not.toMatch(/disagree/);
      expect(verdictOf(await room.say(4, '/reading bucket:gg seconds:14 stirred:yes')).step).toBe('use');
    },
  );

  it('cup and finger that say the opposite leave the water of a heavy bucket as it is', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(1, '/reading bucket:gg gravity:1.5 seconds:10 look:thick stirred:yes');
    expect(verdictOf(answer).step).toBe('add-water');
  });

  // Water is 1.385 mm²/s at 8 °C, 1.003 at 20 and 0.784 at 31 (IAPWS 2008); a cup shows 0.65 of the difference (from memory).
  it.each([
    ['8C', 20, 'ford4: 20 s at 8 °C, about 16.2 s at 20 °C, which is thick (window 12 to 16 s).'],
    ['8C', 17, 'ford4: 17 s at 8 °C, about 13.8 s at 20 °C, which is right (window 12 to 16 s).'],
    ['31C', 10, 'ford4: 10 s at 31 °C, about 11.7 s at 20 °C, which is thin (window 12 to 16 s).'],
    ['20C', 14, 'ford4: 14 s, which is right (window 12 to 16 s).'],
  ])('a temperature of %s is allowed for in a cup time of %i s', async (temperature, seconds, told) => {
    const room = await openRoomWithGullGrey();
    const line = `/reading bucket:gg gravity:1.44 seconds:${seconds} stirred:yes temperature:${temperature}`;
    expect(text((await room.say(1, line)).reasons)).toContain(told);
  });

  it('a temperature that was told an hour before counts for a cup that is timed without one', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 seconds:17 stirred:yes temperature:8C');
    const later = await room.say(3, '/reading bucket:gg seconds:17 stirred:yes');
    expect(text(later.reasons)).toContain('about 13.8 s at 20 °C, which is right');
  });

  it('a cup that the window was not set with: its times are not compared', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(1, '/reading bucket:gg gravity:1.44 seconds:14 cup:zahn2 stirred:yes');
    expect(verdictOf(answer)).toMatchObject({ step: 'measure', flow: null });
    expect(text(answer.reasons)).toMatch(/be compared/);
  });

  it('won’t run is thick', async () => {
    const room = await openRoomWithGullGrey();
    const line = "/reading bucket:gg gravity:1.44 seconds:won't-run stirred:yes";
    expect(verdictOf(await room.say(1, line))).toMatchObject({ step: 'stir-on', flow: 'thick' });
  });

  it('an efflux time at the edges of its window is inside it', async () => {
    const room = await openRoomWithGullGrey();
    for (const [seconds, flow] of [
      [11.9, 'thin'],
      [12, 'in'],
      [16, 'in'],
      [16.1, 'thick'],
    ] as const) {
      const line = `/reading bucket:gg gravity:1.44 seconds:${seconds} stirred:yes`;
      expect(verdictOf(await room.say(1, line)).flow).toBe(flow);
    }
  });
});

describe('stir on, and look again', () => {
  it('a thick bucket is stirred on, looked at again, and only then for a keeper', async () => {
    const room = await openRoomWithGullGrey();
    const thick = '/reading bucket:gg gravity:1.44 seconds:20';
    await room.say(0, '/stirred bucket:gg minutes:2');
    const first = await room.say(1, thick);
    expect(verdictOf(first)).toMatchObject({ step: 'stir-on', then: 'measure' });
    const pressed = await room.say(5, first.actions[0]?.line ?? '');
    expect(verdictOf(pressed)).toMatchObject({ step: 'measure', flow: null });
    const second = await room.say(6, '/reading bucket:gg seconds:19');
    expect(verdictOf(second)).toMatchObject({ step: 'ask-keeper', flow: 'thick' });
    expect(verdictOf(await room.keeper(7, ask)).step).toBe('deflocculate');
    for (const answer of [first, second]) expect(answer.title).toMatch(/(no|don't add) water/i);
  });

  it('stirring on within the same moment counts too', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, '/reading bucket:gg gravity:1.44 seconds:20 stirred:yes');
    const answer = await room.say(0, '/stirred bucket:gg minutes:3');
    expect(verdictOf(answer)).toMatchObject({ step: 'measure', flow: null });
  });

  it('a thick bucket that loosened when stirred on is used', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(0, '/stirred bucket:gg minutes:2');
    await room.say(1, '/reading bucket:gg gravity:1.44 seconds:20');
    await room.say(5, '/stirred bucket:gg minutes:3');
    expect(verdictOf(await room.say(6, '/reading bucket:gg seconds:14')).step).toBe('use');
  });
});

describe('just machine-mixed', () => {
  it('the air is let out, and the flow looked at again after a while, stirred by hand or not', async () => {
    for (const again of ['', 'stirred:yes']) {
      const room = await openRoomWithGullGrey();
      await room.say(0, '/stirred bucket:gg minutes:2 with:mixer');
      const first = await room.say(1, `/reading bucket:gg gravity:1.44 seconds:10 ${again}`);
      expect(verdictOf(first).step).toBe('measure');
      expect(first.title).toMatch(/air/);
      const second = await room.say(9, `/reading bucket:gg gravity:1.44 seconds:10 ${again}`);
      expect(verdictOf(second).step).toBe('flocculate');
    }
  });
});
