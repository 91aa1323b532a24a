import { describe, expect, it } from 'vitest';
import { openRoomWithGullGrey, type GlazeRoom } from '../../helpers/room/glazeRoom.ts';

const number = (value: unknown): number => {
  expect(value).toEqual(expect.any(Number));
  return Number(value);
};
type Interval = { low: number; high: number | null };
const interval = (answer: { data: Record<string, unknown> }) => answer.data['interval'] as Interval;

const withTiles = async (
  tiles: readonly (readonly [seconds: number, mm: number])[],
  more = 'absorption:12',
): Promise<GlazeRoom> => {
  const room = await openRoomWithGullGrey();
  await room.say(1, '/reading bucket:gg gravity:1.44 within:0.002 seconds:14 stirred:yes');
  for (const [seconds, mm] of tiles)
    expect(
      await room.say(2, `/dip tile bucket:gg seconds:${seconds} thickness:${mm}mm ${more}`),
    ).toMatchObject({ ok: true });
  return room;
};

/** L = 0.2 + 0.3√t, with a few hundredths of scatter. */
const tiles = [
  [1, 0.51],
  [1, 0.49],
  [4, 0.8],
  [9, 1.11],
  [9, 1.09],
] as const;

describe('a dip time', () => {
  it('is read off the line through the tiles, with its interval', async () => {
    const room = await withTiles(tiles);
    const answer = await room.say(3, '/dip time bucket:gg thickness:1mm absorption:12');
    // ((1 − 0.2)/0.3)² = 7.11 s
    expect(number(answer.data['seconds'])).toBeCloseTo(7.11, 2);
    expect(answer.data['basis']).toBe('tiles');
    // By hand: the scatter is √(4 × 0.01²/3) = 0.011547 mm, t(0.95, 3) = 2.353 (NIST): 0.0272 mm. A caliper reads to 0.1 mm
    // (common practice), which spreads by 0.1/√12 = 0.0289 mm (JCGM 100:2008, 4.3.7), × 1.645 = 0.0475 mm: more, so that
    // counts. The mean root is 2, Sxx = 1 + 1 + 0 + 1 + 1 = 4. The line with its margin, 0.2 + 0.3x ± 0.0475 ×
    // √(1 + 1/5 + (x − 2)²/4), is 1 mm at x = 2.489 and 2.8528: 6.195 s and 8.138 s.
    expect(Math.abs(interval(answer).low - 6.195)).toBeLessThan(0.1);
    expect(Math.abs(number(interval(answer).high) - 8.138)).toBeLessThan(0.1);
  });

  it('is no surer than a caliper is, when three tiles lie on a line', async () => {
    const room = await withTiles([
      [1, 0.5],
      [4, 0.8],
      [9, 1.1],
    ]);
    const answer = await room.say(3, '/dip time bucket:gg thickness:0.9mm');
    // ((0.9 − 0.2)/0.3)² = 5.444 s. 0.2 + 0.3x ± 0.0475 × √(1 + 1/3 + (x − 2)²/2) is 0.9 mm at x = 2.150 and 2.520
    expect(number(answer.data['seconds'])).toBeCloseTo(5.444, 3);
    expect(Math.abs(interval(answer).low - 2.15 ** 2)).toBeLessThan(0.1);
    expect(Math.abs(number(interval(answer).high) - 2.52 ** 2)).toBeLessThan(0.1);
  });

  it('is brought to today’s gravity by √β, with β itself as the far end', async () => {
    const room = await withTiles([
      [1, 0.5],
      [4, 0.8],
      [9, 1.1],
    ]);
    await room.say(4, '/reading bucket:gg gravity:1.46 within:0.002 seconds:14 stirred:yes');
    // The logbook did not expect it: a second one bears it out.
    await room.say(4, '/reading bucket:gg gravity:1.46 within:0.002 seconds:14 stirred:yes');
    const answer = await room.say(4, '/dip time bucket:gg thickness:1mm');
    // φ = 0.44/1.6 = 0.275 then, 0.46/1.6 = 0.2875 now; β = φ/(0.55 − φ) = 1 then, 1.09524 now. The coat holds the water
    // back: L² grows with β, 7.111/1.09524 = 6.493 s. The body does: 7.111/1.09524² = 5.928 s. By that line the tiles' roots have mean 1.826 and Sxx 1.667, and its slope is
    // 0.32857 mm/√s: with what a caliper reads, it reaches 1 mm from x = 2.261, 5.113 s.
    expect(Math.abs(number(answer.data['seconds']) - 6.493)).toBeLessThan(0.05);
    expect(Math.abs(interval(answer).low - 5.113)).toBeLessThan(0.08);
    expect(number(interval(answer).high)).toBeGreaterThanOrEqual(number(answer.data['seconds']));
  });

  it('is bounded, not corrected, for a body that absorbs less or more', async () => {
    const room = await withTiles(tiles);
    const same = await room.say(3, '/dip time bucket:gg thickness:1mm absorption:12');
    const less = await room.say(3, '/dip time bucket:gg thickness:1mm absorption:10');
    const more = await room.say(3, '/dip time bucket:gg thickness:1mm absorption:16');
    expect(less.data['seconds']).toBe(same.data['seconds']);
    // time goes at most as 12/10, or 12/16
    expect(number(interval(less).high)).toBeCloseTo(number(interval(same).high) * 1.2, 6);
    expect(interval(more).low).toBeCloseTo(interval(same).low * 0.75, 6);
  });

  it.each([
    [tiles, '/dip time bucket:gg thickness:2mm', 'beyond-tiles', /too far from the tiles/],
    [tiles, '/dip time bucket:gg thickness:0.15mm', 'film', /quick dip/],
    [tiles.slice(0, 2), '/dip time bucket:gg thickness:1mm', 'few-tiles', /not enough/],
    [[], '/dip time bucket:gg thickness:1mm', 'few-tiles', /No test tile/],
    [
      [
        [3, 0.7],
        [3, 0.72],
        [3, 0.69],
      ],
      '/dip time bucket:gg thickness:1mm',
      'one-time',
      /All test tiles were dipped for 3 s/,
    ],
    [
      [
        [1, 1],
        [4, 0.9],
        [9, 0.8],
      ],
      '/dip time bucket:gg thickness:0.9mm',
      'flat',
      /no thicker/,
    ],
  ] as const)('is refused with the reason: %j %s', async (dipped, line, why, said) => {
    const room = await withTiles(dipped);
    const answer = await room.say(3, line);
    expect(answer).toMatchObject({ ok: false, kind: 'refusal', data: { why } });
    expect(answer.title).toMatch(said);
  });

  it('reaches past the tiles by half their range, and no farther', async () => {
    const room = await withTiles(tiles);
    // tiles from 1 to 9 s: up to 13 s. 0.2 + 0.3√12.9 = 1.2775 mm; 0.2 + 0.3√13.2 = 1.29 mm
    expect(await room.say(3, '/dip time bucket:gg thickness:1.277mm')).toMatchObject({ ok: true });
    expect(await room.say(3, '/dip time bucket:gg thickness:1.29mm')).toMatchObject({ ok: false });
  });

  it('reaches below the tiles by half of the shortest, and no farther', async () => {
    const room = await withTiles(tiles);
    // shortest 1 s: 0.2 + 0.3√0.51 = 0.4142 mm; 0.2 + 0.3√0.49 = 0.41 mm
    expect(await room.say(3, '/dip time bucket:gg thickness:0.4142mm')).toMatchObject({ ok: true });
    expect(await room.say(3, '/dip time bucket:gg thickness:0.41mm')).toMatchObject({
      ok: false,
      data: { why: 'beyond-tiles' },
    });
    // ((0.203 − 0.2)/0.3)² = 0.0001 s
    const film = await room.say(3, '/dip time bucket:gg thickness:0.203mm');
    expect(film.title).toMatch(/would take under 0\.1 s, too far from the tiles/);
  });

  it('stops at what the wall can drink', async () => {
    const room = await withTiles(tiles);
    // P = A·B = 0.12 × 1.85 = 0.222; β = 1; L ≤ β·ε·w/2 = 0.222 × w/2: 1.11 mm at 10 mm, 0.888 mm at 8 mm
    expect(await room.say(3, '/dip time bucket:gg thickness:1mm wall:10mm')).toMatchObject({ ok: true });
    const thin = await room.say(3, '/dip time bucket:gg thickness:1mm wall:8mm');
    expect(thin).toMatchObject({ ok: false, data: { why: 'wall' } });
    expect(number(thin.data['mostMm'])).toBeCloseTo(0.888, 2);
    // a fifth of its pores full of water already: 1.11 × 0.8 = 0.888 mm
    expect(await room.say(3, '/dip time bucket:gg thickness:1mm wall:10mm wet:20')).toMatchObject({
      ok: false,
    });
  });

  it('keeps bodies apart', async () => {
    const room = await withTiles(tiles, 'body:"buff stoneware"');
    for (const [seconds, mm] of [
      [1, 0.3],
      [4, 0.5],
      [9, 0.7],
    ])
      await room.say(2, `/dip tile bucket:gg seconds:${seconds} thickness:${mm}mm body:porcelain`);
    expect(await room.say(3, '/dip time bucket:gg thickness:0.6mm')).toMatchObject({
      ok: false,
      data: { why: 'which-body' },
    });
    // L = 0.1 + 0.2√t: (0.5/0.2)² = 6.25 s
    const porcelain = await room.say(3, '/dip time bucket:gg thickness:0.6mm body:Porcelain');
    expect(number(porcelain.data['seconds'])).toBeCloseTo(6.25, 2);
  });

  it('forgets a tile that was taken back', async () => {
    const room = await withTiles(tiles.slice(0, 3));
    const slip = await room.say(3, '/dip tile bucket:gg seconds:9 thickness:3mm');
    await room.say(4, `/undo entry:${String(slip.data['entry'])}`);
    expect((await room.say(5, '/dip time bucket:gg thickness:0.7mm')).data['tiles']).toBe(3);
  });

  it('is not given for a bucket on hold', async () => {
    const room = await withTiles(tiles);
    await room.keeper(3, '/bucket hold bucket:gg why:frozen');
    expect(await room.say(4, '/dip time bucket:gg thickness:1mm')).toMatchObject({ kind: 'refusal' });
  });
});

describe('absorption by weighing', () => {
  it('is the standard’s', async () => {
    const room = await openRoomWithGullGrey();
    const answer = await room.say(0, '/dip absorption dry:84.36g suspended:50.12g saturated:95.10g');
    // ASTM C373: 10.74/84.36 = 12.731 %, 10.74/44.98 = 23.877 %, 84.36/44.98 = 1.8755 g/cm³
    expect(number(answer.data['absorptionPercent'])).toBeCloseTo(12.731, 2);
    expect(number(answer.data['apparentPorosityPercent'])).toBeCloseTo(23.877, 2);
    expect(number(answer.data['bulkDensity'])).toBeCloseTo(1.8755, 3);
  });

  it.each([
    'dry:84.36g suspended:90g saturated:95.1g',
    'dry:96g suspended:50g saturated:95.1g',
    'dry:96g saturated:95.1g',
  ])('is refused for weights that can’t be: %s', async (weights) => {
    const room = await openRoomWithGullGrey();
    expect(await room.say(0, `/dip absorption ${weights}`)).toMatchObject({ kind: 'refusal' });
  });
});
