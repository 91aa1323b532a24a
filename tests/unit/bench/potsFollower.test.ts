import { expect, it } from 'vitest';
import type { Action, Reply } from '../../../src/contract/contract.ts';
import { Follower } from '../../bench/pots/bot/follower.ts';
import { Phone } from '../../bench/pots/bot/phone.ts';
import { Reader } from '../../bench/pots/bot/reader.ts';
import { Hands } from '../../bench/pots/people/hands.ts';
import { Score } from '../../bench/pots/people/score.ts';
import { GlazeRoom } from '../../bench/pots/physics/glazeRoom.ts';
import { busy, type RoomSettings } from '../../bench/pots/physics/settings.ts';

/** People who forget and mistake nothing. */
const exact: RoomSettings = {
  ...busy,
  celsius: [20, 20],
  faults: {
    ...busy.faults,
    stirUnlogged: 0,
    additionUnlogged: 0,
    digitsSwapped: 0,
    cupClogged: 0,
    wrongBucket: 0,
    blindLook: 0,
  },
  noise: { gravity: 0, seconds: 0, look: 0, eye: 0, pour: 0 },
};

const run = (line: string): Action => ({ label: [], line, press: 'run' });
const edit = (line: string): Action => ({ label: [], line, press: 'edit' });
const looks = ['thin', 'right', 'thick'].map((look) => run(`/stirred bucket:1 look:${look} after:3`));

const replying = (verdict: Reply['data'], actions: Action[] = []): Reply => ({
  kind: 'answer',
  title: [],
  actions,
  data: { bucket: 1, verdict: { step: 'measure', ...verdict } },
});
const use = replying({ step: 'use', asks: [], sure: { gravity: 0.98, flow: 0.97, both: 0.96 } });

/** Follows answers that are given in this order, at the first pail of a room. */
const following = async (...replies: Reply[]) => {
  const room = new GlazeRoom(exact, 1, 5);
  const score = new Score();
  const hands = new Hands(room, { no: 0, at: 0, bucket: 0, person: 1 }, score, true);
  const lines: string[] = [];
  const say = (line: string): Promise<Reply> => {
    lines.push(line);
    const reply = replies.shift();
    return reply ? Promise.resolve(reply) : Promise.reject(new Error(`nothing answers ${line}`));
  };
  const phone = new Phone({ say }, score, hands);
  const dips = await new Follower(hands, phone, new Reader(hands, phone, exact)).follow();
  return { dips, lines, score, pail: room.pail(0) };
};

it('stirs and looks where one press logs both, and keeps the chance that was said', async () => {
  const { dips, lines, score } = await following(replying({ step: 'stir', then: 'measure' }, looks), use);
  expect(dips).toBe(true);
  expect(lines).toEqual(['/water-or-stir bucket:1', '/stirred bucket:1 look:right after:3']);
  // A stir of 3 minutes and a glance of 0.2.
  expect([score.presses, score.characters, score.minutes]).toEqual([2, 0, 3.2]);
  expect(score.said).toEqual([{ chance: 0.96, true: true }]);
});

it('reads what is asked for, and the weight with the seconds when both are', async () => {
  const form = edit('/reading bucket:1');
  const { lines, score } = await following(
    replying({ asks: ['look'] }, looks),
    replying({ asks: ['seconds'] }, [form]),
    replying({ asks: ['weight', 'seconds'] }, [form]),
    use,
  );
  expect(lines.map((line) => line.replaceAll(/\d+\.\d/g, '#'))).toEqual([
    '/water-or-stir bucket:1',
    '/stirred bucket:1 look:right after:3',
    '/reading bucket:1 seconds:# stirred:yes',
    '/reading bucket:1 weight:#g seconds:# stirred:yes',
  ]);
  // Stir, glance, seconds alone, weighed and timed: 3 + 0.2 + 1 + 2.
  expect(score.minutes).toBeCloseTo(6.2, 9);
});

it('says how full the pail is when no amount can be said without it', async () => {
  const { lines } = await following(
    replying({ step: 'add-water', asks: ['level'] }),
    replying({ step: 'add-water', asks: [], waterMl: 300 }, [run('/added bucket:1 what:water amount:300ml')]),
    use,
  );
  expect(lines.slice(1)).toEqual(['/reading bucket:1 level:15l', '/added bucket:1 what:water amount:300ml']);
});

it('has a keeper do a keeper’s step at once, and goes away when the keeper has none', async () => {
  const powder = [run('/added bucket:1 what:dry amount:500g')];
  const done = await following(
    replying({ step: 'ask-keeper', keeperStep: 'add-dry' }),
    replying({ step: 'add-dry', dryGrams: 500 }, powder),
    use,
  );
  expect([done.dips, done.score.changes]).toEqual([true, 1]);
  const { dips } = await following(replying({ step: 'ask-keeper' }), replying({ step: 'ask-keeper' }));
  expect(dips).toBe(false);
});

const thick = (jarDrops: number): Reply =>
  replying(
    { step: 'deflocculate', asks: [], jarDrops, deflocculantMl: 3 * jarDrops },
    [1, 2, 3].map((count) => run(`/added bucket:1 what:deflocculant amount:${3 * count}ml`)),
  );

it('tries deflocculant in a jar, which leaves the pail as it was', () => {
  const room = new GlazeRoom(exact, 1, 5);
  const hands = new Hands(room, { no: 0, at: 0, bucket: 0, person: 1 }, new Score(), true);
  hands.pail.thicken(3);
  const before = hands.pail.flow;
  expect([0, 3, 6].map((rungs) => hands.lookInJar(rungs))).toEqual(['thick', 'right', 'thin']);
  expect(hands.pail.flow).toBeCloseTo(before, 12);
});

it('pours as much as ran right in the jar', async () => {
  const room = new GlazeRoom(exact, 1, 5);
  const score = new Score();
  const hands = new Hands(room, { no: 0, at: 0, bucket: 0, person: 1 }, score, true);
  hands.pail.thicken(1.4);
  const lines: string[] = [];
  const replies = [thick(1), use];
  const say = (line: string): Promise<Reply> => {
    lines.push(line);
    return Promise.resolve(replies.shift() ?? use);
  };
  const phone = new Phone({ say }, score, hands);
  await new Follower(hands, phone, new Reader(hands, phone, exact)).follow();
  expect(lines[1]).toMatch(/^\/added bucket:1 what:deflocculant amount:[36]ml$/);
  expect(hands.pail.flowIsRight(hands.now)).toBe(true);
});
