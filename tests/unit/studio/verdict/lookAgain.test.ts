import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../../helpers/discord/answerSchemas.ts';
import { gullGreyLine, openGlazeRoom, openRoomWithGullGrey } from '../../../helpers/room/glazeRoom.ts';

describe('a look at the flow after a dose', () => {
  it('counts eleven minutes after the stir, as the ladder asks for', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 seconds:10 stirred:yes');
    await room.say(2, '/added bucket:gg what:flocculant amount:4.8ml');
    await room.say(3, '/stirred bucket:gg minutes:2 with:whisk');
    expect(verdictOf(await room.say(14, '/reading bucket:gg seconds:14'))).toMatchObject({
      step: 'use',
      flow: 'in',
    });
  });

  it('does not count a minute after it, and the answer says how long to wait', async () => {
    const room = await openRoomWithGullGrey();
    const thin = await room.say(1, '/reading bucket:gg gravity:1.44 seconds:10 stirred:yes');
    expect(thin.title).toMatch(/of flocculant solution, stir, wait 10 minutes, look again\./);
    const dosed = await room.say(2, '/added bucket:gg what:flocculant amount:4.8ml');
    expect(dosed.title).toMatch(/^Gull Grey: Stir it in, wait 10 minutes, then look at how it flows\./);
    const soon = await room.say(3, '/reading bucket:gg seconds:10 stirred:yes');
    expect(verdictOf(soon)).toMatchObject({ step: 'measure', flow: null });
    expect(soon.title).toMatch(/It is stirred in: wait 10 minutes/);
    // After a second stir to look again, the first stir after the dose counts.
    expect(verdictOf(await room.say(12, '/reading bucket:gg seconds:14 stirred:yes'))).toMatchObject({
      step: 'use',
      flow: 'in',
    });
  });

  it('is no rung of the ladder when it came too soon: three of them do not say that nothing changed', async () => {
    for (const [wait, title] of [
      [1, /wait 10 minutes/],
      [10, /Stop: the last two doses changed nothing|two doses changed nothing/],
    ] as const) {
      const room = await openRoomWithGullGrey();
      await room.say(1, '/reading bucket:gg gravity:1.44 seconds:10 stirred:yes');
      let answer = await room.say(2, '/water-or-stir bucket:gg');
      for (const at of [3, 20]) {
        await room.say(at, '/added bucket:gg what:flocculant amount:4.8ml');
        answer = await room.say(at + wait, '/reading bucket:gg gravity:1.44 seconds:10 stirred:yes');
      }
      expect(answer.title, String(wait)).toMatch(title);
    }
  });

  it('does not count an hour after the stir, and the answer says so', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 seconds:10 stirred:yes');
    await room.say(2, '/added bucket:gg what:flocculant amount:4.8ml');
    await room.say(3, '/stirred bucket:gg minutes:2 with:whisk');
    const answer = await room.say(63, '/reading bucket:gg seconds:14');
    expect(verdictOf(answer)).toMatchObject({ step: 'measure', flow: null });
    expect(answer.title).toMatch(/Stir it for 60 s/);
    expect(answer.reasons.join('\n')).toMatch(/too long after the stir/);
  });
});

describe('a finger look beside a time of the same stirring', () => {
  it('does not put the cup aside: the cup decides, and that they differ is said', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 seconds:32 stirred:yes');
    const answer = await room.say(2, '/reading bucket:gg look:right');
    expect(verdictOf(answer)).toMatchObject({ step: 'measure', asks: ['seconds'], flow: 'thick' });
    expect(answer.reasons.join('\n')).toMatch(/The cup says thick, the finger says right/);
  });

  it('does not undo the cup by itself once the bucket was stirred again: it is timed again', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 seconds:32 stirred:yes');
    expect(verdictOf(await room.say(5, '/reading bucket:gg look:right stirred:yes'))).toMatchObject({
      step: 'measure',
      asks: ['seconds'],
    });
  });
});

describe('a reading too coarse for its window', () => {
  it('is enough when a second one agrees: two of ± 0.03 together are ± 0.03/√2', async () => {
    const room = await openRoomWithGullGrey();
    const once = await room.say(1, '/reading bucket:gg gravity:1.44 within:0.03 seconds:14 stirred:yes');
    expect(verdictOf(once).step).toBe('measure');
    // 2 · 0.03/√2 = 0.042, shown as 0.02 either way: as wide as the window of 0.04, and no wider.
    const twice = await room.say(3, '/reading bucket:gg gravity:1.44 within:0.03 seconds:14 stirred:yes');
    expect(verdictOf(twice).step).toBe('use');
    expect(twice.reasons.join('\n')).toMatch(
      /2 readings from this session, taken together, give 1\.44 ± 0\.02/,
    );
  });

  it('is not enough when the second disagrees, or something was poured in between', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.46 within:0.03 seconds:14 stirred:yes');
    await room.say(2, '/added bucket:gg what:water amount:100ml');
    const poured = await room.say(3, '/reading bucket:gg gravity:1.44 within:0.03 seconds:14 stirred:yes');
    expect(verdictOf(poured).step).toBe('measure');
  });
});

describe('a weight with or without the empty cup', () => {
  const weigh = async (tare: number, water: number, weight: number) => {
    const room = await openGlazeRoom();
    await room.keeper(0, gullGreyLine());
    await room.keeper(0, `/studio vessel name:tin tare:${tare}g water:${water}g`);
    return room.say(1, `/reading bucket:gg weight:${weight}g seconds:14 stirred:yes`);
  };

  it('is asked about when both would be a glaze: (160 − 20)/100 and 160/100', async () => {
    expect(await weigh(20, 100, 160)).toMatchObject({ kind: 'choice' });
  });

  it('is not when only one would: (460 − 100)/250 = 1.44, but 460/250 = 1.84', async () => {
    const answer = await weigh(100, 250, 460);
    expect(answer).toMatchObject({ kind: 'answer' });
    expect(verdictOf(answer).gravity?.value).toBeCloseTo(1.44, 9);
  });
});

describe('a flow cup with a name of its own', () => {
  it('is the cup meant when only its standard kind is said', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, '/studio cup name:"hall cup" kind:ford4');
    await room.keeper(0, gullGreyLine({ cup: 'hall cup' }));
    const answer = await room.say(1, '/reading bucket:gg gravity:1.44 seconds:14 cup:ford4 stirred:yes');
    expect(verdictOf(answer)).toMatchObject({ step: 'use', flow: 'in' });
  });

  it('is not a cup of a different kind', async () => {
    const room = await openGlazeRoom();
    await room.keeper(0, '/studio cup name:"hall cup" kind:ford4');
    await room.keeper(0, gullGreyLine({ cup: 'hall cup' }));
    const answer = await room.say(1, '/reading bucket:gg gravity:1.44 seconds:14 cup:zahn2 stirred:yes');
    expect(verdictOf(answer).flow).toBeNull();
  });
});

describe('a little water, too little to leave the window by', () => {
  it('is to be stirred in before the bucket is used', async () => {
    const room = await openRoomWithGullGrey();
    await room.say(1, '/reading bucket:gg gravity:1.44 seconds:14 stirred:yes');
    // 100 ml in 15 l: (1.44 · 15 + 0.1)/15.1 = 1.437, a smaller change than a reading can show.
    const poured = await room.say(5, '/added bucket:gg what:water amount:100ml');
    expect(verdictOf(poured).step).toBe('use');
    expect(poured.title).toBe(
      'Gull Grey: Stir in what was added, then use it. Gravity should still be right.',
    );
    expect(poured.dont.join()).toMatch(/before what went in is stirred in/);
    expect(poured.actions.map(({ line }) => line.split(' ')[0])).toEqual(['/stirred']);
    const stirred = await room.say(7, '/stirred bucket:gg minutes:1');
    expect(stirred.title).not.toMatch(/what was added/);
  });
});

describe('too much water in a bucket that flows right', () => {
  it('is told to be thin as a coat meanwhile, and not to be glazed from', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(1, '/reading bucket:gg gravity:1.38 seconds:14 stirred:yes');
    expect(answer.reasons.join()).toMatch(/it puts on a thin coat\. .* flow thicker/);
    expect(answer.dont[0]).toBe("Don't glaze from it as it is.");
  });
});
