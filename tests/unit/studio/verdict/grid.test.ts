import { describe, expect, it } from 'vitest';
import { verdictOf } from '../../../helpers/discord/answerSchemas.ts';
import { openGlazeRoom, openRoomWithGullGrey, type GlazeRoom } from '../../../helpers/room/glazeRoom.ts';

/** Well outside 1.42 to 1.46, or inside it, with the ± 0.01 of a stated gravity. */
const gravities = { low: 1.36, in: 1.44, high: 1.5 } as const;
/** Against 12 to 16 s by Ford #4. */
const flows = { thin: 'seconds:10', in: 'seconds:14', thick: 'seconds:20', unknown: '' } as const;

type Gravity = keyof typeof gravities;
type Flow = keyof typeof flows;
type Hand = 'member' | 'keeper';

/** Stirred for so many minutes, with what, and how long before the reading. */
interface Stirred {
  minutes?: number;
  with?: 'hand' | 'mixer';
  before: number;
}
const shortly: Stirred = { minutes: 2, with: 'hand', before: 1 };
const long: Stirred = { minutes: 6, with: 'hand', before: 1 };

const readingIn = async (room: GlazeRoom, gravity: Gravity, flow: Flow, stirred: Stirred, by: Hand) => {
  const { minutes, with: tool, before } = stirred;
  const how = `${minutes === undefined ? '' : ` minutes:${minutes}`}${tool === undefined ? '' : ` with:${tool}`}`;
  await room.say(10 - before, `/stirred bucket:gg${how}`);
  const line = `/reading bucket:gg gravity:${gravities[gravity]} ${flows[flow]}`;
  return by === 'keeper' ? room.keeper(10, line) : room.say(10, line);
};

interface Cell {
  gravity: Gravity;
  flow: Flow;
  stirred: Stirred;
  member: string;
  keeper?: string;
  then?: string;
}

const cells: Cell[] = [
  { gravity: 'low', flow: 'thin', stirred: shortly, member: 'ask-keeper', keeper: 'draw-off-water' },
  { gravity: 'low', flow: 'in', stirred: shortly, member: 'ask-keeper', keeper: 'draw-off-water' },
  { gravity: 'low', flow: 'thick', stirred: shortly, member: 'stir-on' },
  {
    gravity: 'low',
    flow: 'thick',
    stirred: long,
    member: 'ask-keeper',
    keeper: 'add-dry',
    then: 'deflocculate',
  },
  { gravity: 'low', flow: 'unknown', stirred: shortly, member: 'measure' },
  { gravity: 'in', flow: 'thin', stirred: shortly, member: 'flocculate', then: 'measure' },
  { gravity: 'in', flow: 'thin', stirred: { with: 'mixer', before: 1 }, member: 'measure' },
  { gravity: 'in', flow: 'thin', stirred: { with: 'mixer', before: 8 }, member: 'flocculate' },
  { gravity: 'in', flow: 'in', stirred: shortly, member: 'use' },
  { gravity: 'in', flow: 'thick', stirred: shortly, member: 'stir-on' },
  { gravity: 'in', flow: 'thick', stirred: long, member: 'ask-keeper', keeper: 'deflocculate' },
  { gravity: 'in', flow: 'unknown', stirred: shortly, member: 'measure' },
  { gravity: 'high', flow: 'thin', stirred: shortly, member: 'add-water', then: 'flocculate' },
  { gravity: 'high', flow: 'in', stirred: shortly, member: 'add-water', then: 'measure' },
  { gravity: 'high', flow: 'thick', stirred: shortly, member: 'add-water', then: 'measure' },
  { gravity: 'high', flow: 'thick', stirred: long, member: 'add-water', then: 'measure' },
  { gravity: 'high', flow: 'unknown', stirred: shortly, member: 'add-water', then: 'measure' },
];

const described = ({ minutes, with: tool, before }: Stirred) =>
  `stirred${minutes === undefined ? '' : ` ${minutes} min`} with ${tool ?? 'something'} ${before} min before`;

describe.each(cells)('gravity $gravity, flow $flow', ({ gravity, flow, stirred, member, keeper, then }) => {
  it(`${described(stirred)}: a member is told to ${member}, a keeper to ${keeper ?? member}`, async () => {
    for (const by of ['member', 'keeper'] as const) {
      const room = await openRoomWithGullGrey();
      const answer = await readingIn(room, gravity, flow, stirred, by);
      const verdict = verdictOf(answer);
      expect(verdict.step).toBe(by === 'member' ? member : (keeper ?? member));
      expect(verdict.flow).toBe(flow === 'unknown' ? null : flow);
      expect(verdict.gravity).toEqual({ value: gravities[gravity], u95: 0.01, believed: true });
      if (then !== undefined) expect(verdict.then).toBe(then);
      // Asking again logs nothing and gives the same answer.
      const again = await (by === 'member' ? room.say : room.keeper)(10, '/water-or-stir bucket:gg');
      expect(again.data['verdict']).toEqual(answer.data['verdict']);
    }
  });
});

describe('a bucket marked for gloves, without a window of seconds', () => {
  it.each([
    [1.44, 'ask-keeper'],
    [1.36, 'ask-keeper'],
    [1.5, 'add-water'],
  ])('at %s leads to %s: there is no way for a member to look at its flow', async (gravity, step) => {
    const room = await openGlazeRoom();
    await room.keeper(0, '/bucket add name:A pail:19l volume:15l gravity:1.42-1.46 cautions:gloves');
    const answer = await room.say(1, `/reading bucket:a gravity:${gravity} seconds:14 stirred:yes`);
    expect(verdictOf(answer).step).toBe(step);
    if (step === 'ask-keeper') expect(answer.title).toMatch(/keeper.*seconds/);
  });
});

/** Amounts aim at mid-window, 1.44, from 15 l with powder of 2.6; computed by hand. */
describe('the amounts of a cell', () => {
  const amounts = async (gravity: Gravity, flow: Flow, by: Hand = 'member') => {
    const room = await openRoomWithGullGrey();
    return verdictOf(await readingIn(room, gravity, flow, long, by));
  };

  it.each(['thin', 'in', 'unknown'] as const)('high, %s: 15 l · 0.06 / 0.44 of water', async (flow) => {
    expect((await amounts('high', flow)).waterMl).toBeCloseTo(2045.45, 1);
  });

  it('high, thick: half of that first', async () => {
    expect((await amounts('high', 'thick')).waterMl).toBeCloseTo(1022.73, 1);
  });

  it.each(['thin', 'in'] as const)(
    'low, %s: 15 l · 0.08 / 0.44 of clear water off, or dry batch, for a keeper and ready for a member',
    async (flow) => {
      for (const by of ['member', 'keeper'] as const) {
        const verdict = await amounts('low', flow, by);
        expect(verdict.drawOffMl).toBeCloseTo(2727.27, 1);
        expect(verdict.dryGrams).toBeCloseTo(2689.66, 1);
        expect(verdict.waterMl).toBeUndefined();
        expect(verdict.doseMl).toBeUndefined();
      }
    },
  );

  it('low, thick after a long stir: dry batch only, for gels give no clear water to draw off', async () => {
    const verdict = await amounts('low', 'thick', 'keeper');
    expect(verdict.dryGrams).toBeCloseTo(2689.66, 1);
    expect(verdict.drawOffMl).toBeUndefined();
  });

  it('in, thin: 0.03 % of 10 725 g of dry mass as Epsom salt, in saturated solution', async () => {
    // A 4.93 ml teaspoon of the saturated solution holds 3.28 g at 20 °C (Pitzer calculation, within 6 %).
    const wanted = (10_725 * 0.0003 * 4.93) / 3.28;
    const { doseMl } = await amounts('in', 'thin');
    expect(doseMl).toBeGreaterThan(wanted * 0.94);
    expect(doseMl).toBeLessThan(wanted * 1.06);
  });

  it.each([
    ['in', 'in'],
    ['in', 'thick'],
    ['in', 'unknown'],
    ['low', 'unknown'],
  ] as const)('%s, %s: no amount of anything', async (gravity, flow) => {
    const verdict = await amounts(gravity, flow);
    const { waterMl, drawOffMl, dryGrams, doseMl } = verdict;
    expect({ waterMl, drawOffMl, dryGrams, doseMl }).toEqual({});
  });
});
