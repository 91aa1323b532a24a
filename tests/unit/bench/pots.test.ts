import { describe, expect, it } from 'vitest';
import { bot } from '../../bench/pots/deciders/bot.ts';
import { carefulKeeper } from '../../bench/pots/deciders/keeper.ts';
import { nobody } from '../../bench/pots/deciders/simple.ts';
import { swapped } from '../../bench/pots/people/digits.ts';
import { Hands } from '../../bench/pots/people/hands.ts';
import { liveThrough } from '../../bench/pots/people/liveThrough.ts';
import { Score } from '../../bench/pots/people/score.ts';
import { visitsOf } from '../../bench/pots/people/visits.ts';
import { chance, moments } from '../../bench/pots/physics/chance.ts';
import { GlazeRoom } from '../../bench/pots/physics/glazeRoom.ts';
import { Pail } from '../../bench/pots/physics/pail.ts';
import { busy, type RoomSettings } from '../../bench/pots/physics/settings.ts';
import { wildRoom } from '../../bench/pots/physics/wildRoom.ts';

/** Ten litres at 1.44, of grains of 2.6: 0.275 of it is grains, 7150 g of them in 7250 g of water; it runs 14 s. */
const tenLitres = () =>
  new Pail(
    {
      gravityWindow: { low: 1.42, high: 1.46 },
      secondsWindow: { low: 12, high: 16 },
      grains: 2.6,
      perGravity: 10,
      perRung: 0.3,
      gel: 0,
    },
    10_000,
  );

describe('a simulated pail', () => {
  it('holds the water and the grains that its gravity says', () => {
    const pail = tenLitres();
    expect(pail.water).toBeCloseTo(7250, 6);
    expect(pail.grains).toBeCloseTo(7150, 6);
    expect(pail.volume).toBeCloseTo(10_000, 6);
    expect(pail.gravity).toBeCloseTo(1.44, 9);
    expect(pail.secondsAt(0)).toBeCloseTo(14, 9);
  });

  it('gets lighter by water: 14 900 g in 10.5 l', () => {
    const pail = tenLitres();
    pail.pourWater(500);
    expect(pail.gravity).toBeCloseTo(1.419048, 6);
  });

  it('gets heavier by powder: 520 g take 0.2 l, 14 920 g in 10.2 l', () => {
    const pail = tenLitres();
    pail.addPowder(520);
    expect(pail.gravity).toBeCloseTo(1.462745, 6);
  });

  it('is dipped from as it is', () => {
    const pail = tenLitres();
    pail.dip(2500);
    expect(pail.volume).toBeCloseTo(7500, 6);
    expect(pail.gravity).toBeCloseTo(1.44, 9);
  });

  it('takes fresh mix by its share: 10 l at 1.44 and 5 l at 1.50 make 1.46', () => {
    const pail = tenLitres();
    pail.topUp(5000, 1.5, pail.flow + 0.3);
    expect(pail.gravity).toBeCloseTo(1.46, 9);
    expect(pail.flow - tenLitres().flow).toBeCloseTo(0.1, 9);
  });

  it('is thickened one rung by 0.03 % of its grains in salt: 9.2 s beyond water become 12.42', () => {
    const pail = tenLitres();
    pail.salt(0.0003 * 7150);
    expect(pail.secondsAt(0)).toBeCloseTo(4.8 + 9.2 * Math.exp(0.3), 9);
  });

  it('is right up to the leeway, and within 45 minutes of a stir', () => {
    const pail = tenLitres();
    expect(pail.isRight(0)).toBe(false);
    pail.stir(0, false);
    expect([pail.isRight(45), pail.isRight(46)]).toEqual([true, false]);
    // To 1.4651, (1.4651 − 1.44)/0.4651 of its volume dries off; its flow is set back to what it was.
    pail.pourWater(-10_000 * (0.0251 / 0.4651));
    expect(pail.gravity).toBeCloseTo(1.4651, 9);
    pail.flow -= 10 * 0.0251;
    expect([pail.flowIsRight(1), pail.gravityIsRight()]).toEqual([true, false]);
  });
});

const still: RoomSettings = {
  ...busy,
  buckets: 1,
  strangers: {
    water: { perDay: 0, ml: [0, 0] },
    powder: { perDay: 0, grams: [0, 0] },
    salt: { perDay: 0, rungs: [0, 0] },
    lidOff: { perDay: 0, ml: [0, 0] },
  },
  evaporation: [20, 20],
  flowDrift: { sd: 0, lean: [0, 0] },
};

describe('a simulated room', () => {
  it('dries out by its evaporation: ten nights of 20 ml', () => {
    const room = new GlazeRoom(still, 1, 10);
    const before = room.pail(0).water;
    room.advance(14_400);
    expect(before - room.pail(0).water).toBeCloseTo(200, 6);
  });

  it('befalls the same under everybody, however long they take', () => {
    const [one, other] = [new GlazeRoom(busy, 3, 20), new GlazeRoom(busy, 3, 20)];
    for (let at = 0; at <= 28_000; at += 700) one.advance(at);
    other.advance(28_000);
    expect(one.pails.map(({ water, grains, flow }) => [water, grains, flow])).toEqual(
      other.pails.map(({ water, grains, flow }) => [water, grains, flow]),
    );
  });

  it('sends strangers as often as it is set: 400 in 10 000 days at 0.04', () => {
    // Poisson: three standard deviations are 60.
    expect(Math.abs(moments(chance('strangers'), 0.04, 10_000).length - 400)).toBeLessThan(60);
  });
});

describe('simulated people', () => {
  it('read with the same luck whatever they did before', () => {
    const [visit] = visitsOf(still, 1, 10);
    if (!visit) throw new Error('nobody comes');
    const reads = [false, true].map((first) => {
      const hands = new Hands(new GlazeRoom(still, 1, 10), visit, new Score(), false);
      if (first) hands.look();
      hands.stir('usual');
      return hands.weigh().typed;
    });
    expect(reads[0]).toBe(reads[1]);
  });

  it('swap two neighbours of different digits, and begin no number with a nought', () => {
    expect(swapped('13.6', chance('a'))).toMatch(/^(?:31\.6|16\.3)$/);
    expect(swapped('10.0', chance('a'))).toBe('10.0');
  });

  it('do harm by water into what was inside its window, and none by water into what was above it', () => {
    const [visit] = visitsOf(still, 1, 10);
    if (!visit) throw new Error('nobody comes');
    const room = new GlazeRoom(still, 1, 10);
    const score = new Score();
    const hands = new Hands(room, visit, score, false);
    hands.water(100);
    expect([score.changes, score.harmful]).toEqual([1, 1]);
    room.pail(0).addPowder(2_000);
    hands.water(300);
    expect([score.changes, score.harmful]).toEqual([2, 1]);
  });
});

const tiny: RoomSettings = { ...busy, buckets: 2 };

describe('who decides in a tiny room', () => {
  it('makes a wide difference: a careful keeper has right pails, nobody has not', async () => {
    const part = async (decider: typeof nobody) => {
      const scores = await Promise.all(
        [1, 2, 3, 4].map((seed) => liveThrough(tiny, decider, { seed, days: 40 })),
      );
      const sum = (of: (score: Score) => number) => scores.reduce((all, score) => all + of(score), 0);
      return sum(({ right }) => right) / sum(({ dips }) => dips);
    };
    expect(await part(carefulKeeper)).toBeGreaterThan((await part(nobody)) + 0.4);
  });

  it('may be the bot, which does the same again with the same luck', async () => {
    const live = () => liveThrough(tiny, bot, { seed: 2, days: 6 });
    const [one, again] = [await live(), await live()];
    expect(one.dips).toBeGreaterThan(0);
    expect(one.presses).toBeGreaterThan(one.dips);
    expect({ ...again }).toEqual({ ...one });
  });
});

describe('a room that is drawn by chance', () => {
  it('is the same for the same number, and differs from the next', () => {
    expect(wildRoom(1)).toEqual(wildRoom(1));
    expect(wildRoom(1).strangers).not.toEqual(wildRoom(2).strangers);
  });

  it('keeps every fault a chance', () => {
    for (let no = 1; no <= 200; no += 1) {
      const { clogTimes: _, ...faults } = wildRoom(no).faults;
      for (const chance of Object.values(faults)) {
        expect(chance).toBeGreaterThan(0);
        expect(chance).toBeLessThanOrEqual(0.6);
      }
    }
  });
});
