import { describe, expect, it } from 'vitest';
import { openGlazeRoom, openRoomWithGullGrey } from '../../helpers/room/glazeRoom.ts';

describe('an option that a command does not have', () => {
  it.each([
    ['/dose kind:solution', /^\/dose has no “kind:”\. It takes bucket:, what:, /],
    ['/studio set colour:"Crab Apple Yard"', /^\/studio set has no “colour:”\. It takes .*zone:/],
    ['/dose bucket:gg amount:5', /^\/dose has no “amount:”\. It takes bucket:, what:, /],
    ['/dose bucket:gg what:solution amount:ten', /^\/dose has no “amount:”/],
    ['/undo reason:slip entry:1-1', /^\/undo has no “reason:”\. It takes entry:\.$/],
  ])('is named, and what there is: %s', async (line, said) => {
    const room = await openRoomWithGullGrey();
    const answer = await room.keeper(1, line);
    expect(answer.kind).toBe('refusal');
    expect(answer.title).toMatch(said);
  });

  it.each(['/ask glaze: why does it pinhole', '/coat on pieces: bowl kind:wax'])(
    'is not looked for in prose: %s',
    async (line) => {
      const room = await openRoomWithGullGrey();
      expect((await room.say(1, line)).title).not.toMatch(/has no/);
    },
  );
});

describe('a bucket with values after it that have no option', () => {
  it.each(['gull grey 229.9 14 yes', 'gg 229.9 14 yes', '1 229.9', 'bucket:"gull grey 229.9"'])(
    '%s: the rest is asked for by its options',
    async (typed) => {
      const room = await openRoomWithGullGrey();
      const answer = await room.say(1, `/reading ${typed}`);
      expect(answer.kind).toBe('refusal');
      expect(answer.title).toMatch(
        /^(gull grey|gg|1) is a bucket\. Put an option name before “229\.9.*”, such as weight:246\.2g .*stirred:yes\.$/,
      );
    },
  );

  it('a name that is only misspelt is still guessed at', async () => {
    const room = await openRoomWithGullGrey();
    expect((await room.say(1, '/water-or-stir gull gray')).title).toMatch(/Did you mean Gull Grey\?/);
  });

  it('a studio without a bucket says how to add one', async () => {
    const room = await openGlazeRoom();
    const answer = await room.say(1, '/reading bucket:gg gravity:1.44');
    expect(answer.title).toMatch(/There is no bucket yet\. A keeper can set one up: \/bucket add name:/);
  });
});

describe('a value that is wrong', () => {
  it.each([
    ['/reading bucket:gg seconds:-5', /“-5” is below zero\. Type it like 14\./],
    ['/reading bucket:gg gravity:NaN stirred:yes', /“NaN” is not a number\. Type it like 1\.44\./],
    ['/reading bucket:gg gravity:1e309 stirred:yes', /“1e309” is not a number\. Type it like 1\.44\./],
    ['/added bucket:gg what:water amount:"1/0 cup"', /“1\/0 cup” is not a number\. Type it like 450 ml\./],
    ['/stirred bucket:gg minutes:ten', /“ten” is not a number\. Type it like 3\./],
    ['/fired bucket:gg result:crawling pieces:"5 of 2"', /“5 of 2” is more .* 2 of 5\?/],
    ['/reading bucket:gg gap:200cm', /“200cm” is too high\. The highest is 100 cm/],
    ['/reading bucket:gg gap:"90 in"', /highest is 39\.4 in/],
    ['/reading bucket:gg gap:2000mm', /highest is 1000 mm/],
    ['/redact entry:1-99', /There is no entry 1-99/],
    ['/redact entry:1-1', /1-1 has no note/],
    ['/studio set name:""', /^Nothing was typed after name:/],
    ['/studio set', /^Say what to set/],
  ])('%s says what to type', async (line, said) => {
    const room = await openRoomWithGullGrey();
    const answer = await room.keeper(1, line);
    expect(answer.kind).toBe('refusal');
    expect(answer.title).toMatch(said);
  });
});

describe('a time that cannot be used', () => {
  it('without its hour says what to type', async () => {
    const room = await openGlazeRoom();
    const answer = await room.say(1, '/coat on kind:wax pieces:bowl for:tonight');
    expect(answer.title).toMatch(/such as “tonight 7pm”/);
    const typed = /“(tonight 7pm)”/.exec(answer.title)?.[1];
    expect(await room.say(2, `/coat on kind:wax pieces:bowl for:"${typed}"`)).toMatchObject({ ok: true });
  });

  it('that has passed says what to do', async () => {
    const room = await openGlazeRoom();
    const answer = await room.say(600, '/coat on kind:wax pieces:bowl for:"today 1pm"');
    expect(answer.title).toMatch(/in the past\. Type a time that is still to come/);
  });
});
