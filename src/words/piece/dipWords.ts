import type { SqrtFit } from '../../glaze/statistics/sqrtFit.ts';
import type { DipInterval, DipTime } from '../../studio/piece/dipTime.ts';
import type { BucketUse } from '../../studio/settings/bucketSettings.ts';
import { gravityText, secondsText } from '../text/measures.ts';
import { join, said, t, type Text } from '../text/text.ts';

const plainSeconds = (value: number): string =>
  value < 0.05 ? 'under 0.1 s' : `${Number(value.toFixed(1))} s`;
const mm = (value: number): string => `${Number(value.toFixed(2))} mm`;

const noTime = (why: Exclude<DipTime, { kind: 'dip' }>): Text => {
  switch (why.kind) {
    case 'few-tiles':
      return why.tiles === 0
        ? t`No test tile of this bucket${why.body === undefined ? [] : t` on ${said(why.body)}`} is logged yet. Dip three tiles, for 1, 3 and 6 s, and log each: /dip tile.`
        : t`${why.tiles === 1 ? t`One test tile is` : [`${why.tiles} test tiles are`]} not enough. Dip three or more, each for a different time.`;
    case 'one-time':
      return t`All test tiles were dipped for ${[secondsText(why.seconds)]}: that says nothing about other times. Dip one shorter and one longer.`;
    case 'which-body':
      return t`The tiles are of several clay bodies. Which one is this piece? ${join(
        why.bodies.map((one) => t`body:${said(one)}`),
        ', ',
      )}.`;
    case 'flat':
      return t`The longer dips made no thicker coat, so the tiles can't tell how long to dip. Was one mixed up? Dip three more.`;
    case 'no-gravity':
      return t`Measure the bucket first: the tiles are valid only for a known gravity.`;
    case 'too-dense':
      return t`The bucket is as thick as a finished coat. Add water before you dip anything.`;
    case 'film':
      return t`Even a quick dip leaves about ${[mm(why.film)]}. Dip and pull it out at once, or thin the bucket.`;
    case 'beyond-tiles':
      return t`That would take ${[why.seconds < 0.05 ? '' : 'about ']}${[plainSeconds(why.seconds)]}, too far from the tiles, which were dipped from ${[secondsText(why.range.low)]} to ${[secondsText(why.range.high)]}. Dip a tile closer to that time.`;
    case 'wall':
      return t`This wall is soaked once each side has ${[mm(why.most)]} of glaze, however long you hold it under. Put on two coats and let the first dry before the second, or pour one side at a time.`;
  }
};

export const dipWords = {
  notDipped: (name: string, use: BucketUse): Text =>
    t`${said(name)} is for ${[use]}, so nothing is dipped in it. Ask its keeper how many coats it takes.`,
  about: 'Test tiles, dip times, and how much water bisque absorbs',
  tile: 'Log a test tile: how long you dipped it and how thick the glaze came out',
  time: 'How long to dip for the thickness you want, worked out from test tiles',
  absorptionAbout: 'How much water bisque absorbs, from its weights dry, hung in water, and soaked',
  bucket: 'Which bucket: name, nickname or number',
  seconds: 'How long you held it under',
  thickness: 'Thickness of the dry glaze',
  absorption: 'How much water the bisque absorbs, in percent',
  body: 'The clay body',
  gravity: 'Gravity of the bucket at the time, if it has changed since',
  wall: 'Thickness of the wall, for a piece dipped whole',
  wet: 'How wet the piece is, in percent of full, if you just sponged or rinsed it',
  dry: 'Weight when dry, out of the oven and cooled',
  suspended: 'Weight when soaked and hung in water',
  saturated: 'Weight when soaked and wiped',

  noTime,
  tileLogged: (seconds: number, thickness: number, entry: string): Text =>
    t`${[plainSeconds(seconds)]}, ${[mm(thickness)]}: logged as ${[entry]}.`,
  moreTiles: (tiles: number, oneTime: boolean): Text =>
    tiles < 3
      ? t`${tiles} of at least 3 tiles. Dip the next for a different time.`
      : oneTime
        ? t`All tiles had the same time. Dip one shorter and one longer.`
        : t`${tiles} tiles are enough for a dip time.`,
  measureDry: t`Measure when the glaze is dry: push a pin through to the clay, or scrape a patch bare and measure with a caliper.`,
  factTiles: 'Tiles',
  tilesFact: (count: number, low: number, high: number): Text =>
    t`${count}; in today's bucket they would take ${[plainSeconds(low)]} to ${[plainSeconds(high)]}`,
  factInterval: '9 times out of 10',
  interval: ({ low, high }: DipInterval): Text =>
    high === undefined
      ? t`from ${[plainSeconds(low)]}; the tiles vary too much to give a longest time`
      : t`between ${[plainSeconds(low)]} and ${[plainSeconds(high)]}`,
  factGravity: 'Gravity',
  gravityFact: (value: number): Text => [`${gravityText(value)} now`],
  dip: (seconds: number, thickness: number): Text =>
    t`Dip ${[plainSeconds(seconds)]} for ${[mm(thickness)]}.`,
  notReady: (step: string): Text => t`The bucket isn't ready: ${[step]}.`,
  line: ({ intercept, slope }: SqrtFit): Text =>
    t`By the tiles, at today's gravity: a quick dip leaves ${[mm(intercept)]}, and a longer one adds ${[mm(slope)]} times the square root of its seconds.`,
  absorbs: (piece: number, tiles: number): Text =>
    t`This piece absorbs ${[String(piece)]} %, the tiles ${[String(Number(tiles.toFixed(1)))]} %. The range of seconds allows for that.`,
  wallNear: (most: number): Text =>
    t`The wall takes on at most ${[mm(most)]} a side: don't hold it under longer.`,
  usualCoat: t`This assumes that fresh glaze on the pot is 55 % powder by volume, and that bisque weighs 1.85 times as much as the same volume of water.`,
  dont: t`Don’t dip a second time before the first coat is dry to the touch.`,

  absorptionTitle: (percent: number): Text => t`It absorbs ${[percent.toFixed(1)]} % of its weight in water.`,
  absorptionRefused: (quantity: string): Text =>
    t`Those weights can't all be right: check the ${[quantity]}. A soaked piece weighs more than a dry one; hung in water it weighs less.`,
  factPorosity: 'Apparent porosity',
  factBulk: 'Bulk density',
  percent: (part: number): Text => [`${(100 * part).toFixed(1)} %`],
  density: (kgPerM3: number): Text => [`${(kgPerM3 / 1000).toFixed(3)} g/cm³`],
  usualBisque: (low: number, high: number, inside: boolean): Text =>
    t`Studio bisque is usually ${[String(100 * low)]} to ${[String(100 * high)]} %${[inside ? '' : '. This one is outside that, so dip test tiles of this bisque first']}.`,
  soaking: t`Boil it in water for two hours and let it soak cold overnight. Wipe off the drops before you weigh it.`,
};
