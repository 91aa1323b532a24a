import type { SqrtFit } from '../../glaze/statistics/sqrtFit.ts';
import type { DipInterval, DipTime } from '../../studio/piece/dipTime.ts';
import { gravityText, secondsText } from '../text/measures.ts';
import { join, ours, said, t, type Text } from '../text/text.ts';

const plainSeconds = (value: number): string =>
  value < 0.05 ? 'under 0.1 s' : `${Number(value.toFixed(1))} s`;
const mm = (value: number): string => `${Number(value.toFixed(2))} mm`;

/** Why there is no dip time. */
const noTime = (why: Exclude<DipTime, { kind: 'dip' }>): Text => {
  switch (why.kind) {
    case 'few-tiles':
      return why.tiles === 0
        ? t`No test tile of this bucket${why.body === undefined ? [] : t` on ${said(why.body)}`} is logged yet. Dip three, 1, 3 and 6 s: /dip tile bucket: seconds: thickness:.`
        : t`${why.tiles === 1 ? ['One test tile is'] : [`${why.tiles} test tiles are`]} not enough for a line: dip three or more, at different times.`;
    case 'one-time':
      return t`All test tiles were dipped for ${[secondsText(why.seconds)]}: that says nothing of another time. Dip one shorter and one longer.`;
    case 'which-body':
      return t`The tiles are of several bodies. Which is this piece? ${join(
        why.bodies.map((one) => t`body:${said(one)}`),
        ', ',
      )}.`;
    case 'flat':
      return t`The longer dips made no thicker coat, so the tiles can't say how long. Was one mixed up? Dip three more.`;
    case 'no-gravity':
      return t`Measure the bucket first: the tiles hold for the gravity that they were dipped at.`;
    case 'too-dense':
      return t`The bucket is as dense as a coat is: it needs water before anything is dipped.`;
    case 'film':
      return t`A quick dip alone leaves about ${[mm(why.film)]}: dip and out, or thin the bucket.`;
    case 'beyond-tiles':
      return t`That would take ${[why.seconds < 0.05 ? '' : 'about ']}${[plainSeconds(why.seconds)]}, too far from the tiles, which went from ${[secondsText(why.range.low)]} to ${[secondsText(why.range.high)]}. Dip a tile nearer to it.`;
    case 'wall':
      return t`This wall is full of water at ${[mm(why.most)]} a side, however long it is held under. Two coats, the first dry before the second, or pour one side at a time.`;
  }
};

export const dipWords = {
  about: 'Test tiles, dip times, and what bisque absorbs',
  tile: 'Log a test tile: how long it was dipped, how thick its coat came out',
  time: 'How long to dip for a wanted thickness, from the test tiles',
  absorptionAbout: 'What fired bisque absorbs, from its weights dry, hung in water, and soaked',
  bucket: 'Which bucket: name, nickname or number',
  seconds: 'How long it was held under',
  thickness: 'Thickness of the coat, dry',
  absorption: 'What the bisque absorbs, in per cent',
  body: 'The clay body',
  gravity: 'Gravity of the bucket then, if it was another than now',
  wall: 'Thickness of the wall, for a piece dipped whole',
  wet: 'Was it sponged or rinsed just before? How full its pores are, in per cent',
  dry: 'Weight dry, out of the oven and cooled',
  suspended: 'Weight hung in water, soaked',
  saturated: 'Weight soaked and wiped',

  noTime,
  tileLogged: (seconds: number, thickness: number, entry: string): Text =>
    t`${[plainSeconds(seconds)]}, ${[mm(thickness)]}: logged as ${[entry]}.`,
  moreTiles: (tiles: number, oneTime: boolean): Text =>
    tiles < 3
      ? t`${tiles} of at least 3. Dip the next for another time.`
      : oneTime
        ? t`All for the same time: dip one shorter and one longer.`
        : t`${tiles} tiles: enough for a dip time.`,
  measureDry: ours(
    'Measure when the coat is dry: a pin through to the body, or scrape a patch and measure across with a caliper.',
  ),
  factTiles: 'Tiles',
  tilesFact: (count: number, low: number, high: number): Text =>
    t`${count}, from ${[plainSeconds(low)]} to ${[plainSeconds(high)]} in today's bucket`,
  factInterval: 'Nine times in ten',
  interval: ({ low, high }: DipInterval): Text =>
    high === undefined
      ? t`from ${[plainSeconds(low)]}; the tiles scatter too much to say at most how long`
      : t`between ${[plainSeconds(low)]} and ${[plainSeconds(high)]}`,
  factGravity: 'Gravity',
  gravityFact: (value: number): Text => [`${gravityText(value)} now`],
  dip: (seconds: number, thickness: number): Text =>
    t`Dip ${[plainSeconds(seconds)]} for ${[mm(thickness)]}.`,
  notReady: (step: string): Text => t`The bucket isn't ready: ${[step]}.`,
  line: ({ intercept, slope }: SqrtFit): Text =>
    t`Tiles at today's gravity: ${[mm(intercept)]} that drains onto it, and ${[mm(slope)]} for each root second.`,
  absorbs: (piece: number, tiles: number): Text =>
    t`This piece absorbs ${[String(piece)]} %, the tiles ${[String(Number(tiles.toFixed(1)))]} %. How much that matters depends on what holds the water back: the interval covers both.`,
  wallNear: (most: number): Text => t`The wall draws at most ${[mm(most)]} a side: don't hold it longer.`,
  usualCoat: ours(
    'Taken: a fresh coat is 55 % powder by volume, bisque weighs 1.85 times its volume of water.',
  ),
  dont: ours('Don’t dip a second time before the first coat is dry to the touch.'),

  absorptionTitle: (percent: number): Text => t`It absorbs ${[percent.toFixed(1)]} % of its weight in water.`,
  absorptionRefused: (quantity: string): Text =>
    t`Those weights don't go together: see the ${[quantity]}. Dry is lighter than soaked, and hung in water it is lighter than dry.`,
  factPorosity: 'Apparent porosity',
  factBulk: 'Bulk density',
  percent: (part: number): Text => [`${(100 * part).toFixed(1)} %`],
  density: (kgPerM3: number): Text => [`${(kgPerM3 / 1000).toFixed(3)} g/cm³`],
  usualBisque: (low: number, high: number, inside: boolean): Text =>
    t`Studio bisque is usually ${[String(100 * low)]} to ${[String(100 * high)]} %${[inside ? '' : ': this one is not, and wants its own tiles']}.`,
  soaking: ours(
    'Boil it two hours in water and let it soak cold overnight; wipe off the drops before weighing.',
  ),
};
