import { bucketCautions, bucketUses, type BucketCaution } from '../../studio/settings/bucketSettings.ts';
import { hours } from '../../studio/ids.ts';
import type { Kind } from '../../contract/contract.ts';
import { cone } from '../../contract/kinds/bisque.ts';
import { pick, several } from '../../contract/kinds/picks.ts';
import {
  gravityWindow,
  length,
  number,
  secondsWindow,
  time,
  volume,
} from '../../contract/kinds/quantities.ts';
import { cup } from '../../contract/kinds/studioThings.ts';
import { name, text } from '../../contract/kinds/texts.ts';
import type { Words } from '../../words/words.ts';

const mesh: Kind<number | 'never'> = {
  control: 'text',
  example: '80',
  read: (typed, asking) =>
    /^(?:never|none|no|0)$/i.test(typed.trim())
      ? { ok: true, value: 'never' }
      : number(10, 500, '80').read(typed, asking),
};

const saysNone = /^(?:none|nothing|no)$/i;

const marked = several(bucketCautions);
/** All cautions of a bucket, or `none`. */
const cautions: Kind<BucketCaution[]> = {
  ...marked,
  read: (typed, asking) =>
    saysNone.test(typed.trim()) ? { ok: true, value: [] } : marked.read(typed, asking),
};

/** A setting that the word `none` takes away again. */
const orNone = <T>(kind: Kind<T>): Kind<T | 'none'> => ({
  ...kind,
  read: (typed, asking) =>
    saysNone.test(typed.trim()) ? { ok: true, value: 'none' } : kind.read(typed, asking),
});

/** The options for a bucket's settings, when it is added and when it is changed. */
export const bucketOptions = {
  nick: { kind: name(12, 'gg'), needed: false, about: (w: Words) => w.bucket.nick },
  pail: { kind: volume(100, 250_000, 'l', '19l'), needed: false, about: (w: Words) => w.bucket.pail },
  volume: { kind: volume(10, 250_000, 'l', '15l'), needed: false, about: (w: Words) => w.bucket.volume },
  gravity: { kind: gravityWindow, needed: false, about: (w: Words) => w.bucket.gravity },
  seconds: { kind: secondsWindow, needed: false, about: (w: Words) => w.bucket.seconds },
  cup: { kind: cup, needed: false, about: (w: Words) => w.bucket.cup },
  solids: { kind: number(1.5, 7, '2.6'), needed: false, about: (w: Words) => w.bucket.solids },
  rest: {
    kind: time(hours(0.05), hours(24 * 14), 'h', '4h'),
    needed: false,
    about: (w: Words) => w.bucket.rest,
  },
  fresh: {
    kind: time(hours(1), hours(24 * 90), 'h', '7 days'),
    needed: false,
    about: (w: Words) => w.bucket.fresh,
  },
  mesh: { kind: mesh, needed: false, about: (w: Words) => w.bucket.mesh },
  use: {
    kind: pick(bucketUses, { dip: 'dipping', brush: 'brushing', spray: 'spraying' }),
    needed: false,
    about: (w: Words) => w.bucket.use,
  },
  cautions: { kind: cautions, needed: false, about: (w: Words) => w.bucket.cautions },
  recipe: { kind: text(400, 'Gull Grey'), needed: false, about: (w: Words) => w.bucket.recipe },
  glaze: { kind: text(60, 'Gull Grey'), needed: false, about: (w: Words) => w.bucket.glaze },
  cone: { kind: orNone({ ...cone, example: '6' }), needed: false, about: (w: Words) => w.bucket.cone },
  atmosphere: {
    kind: orNone(name(40, 'oxidation')),
    needed: false,
    about: (w: Words) => w.bucket.atmosphere,
  },
  bodies: {
    kind: orNone(name(120, 'stoneware, porcelain')),
    needed: false,
    about: (w: Words) => w.bucket.bodies,
  },
  rim: { kind: length(50, 1500, 'cm', '28cm'), needed: false, about: (w: Words) => w.bucket.rim },
  bottom: { kind: length(50, 1500, 'cm', '25cm'), needed: false, about: (w: Words) => w.bucket.bottom },
  height: { kind: length(50, 1500, 'cm', '35cm'), needed: false, about: (w: Words) => w.bucket.height },
} as const;
