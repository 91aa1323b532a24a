import { bucketCautions, bucketUses, type BucketCaution } from '../../studio/settings/bucketSettings.ts';
import { hours } from '../../studio/ids.ts';
import type { Kind, Option } from '../../contract/contract.ts';
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

/** A setting that the word `none` takes away again. */
const orNone = <T, None>(kind: Kind<T>, none: None): Kind<T | None> => ({
  ...kind,
  read: (typed, asking) =>
    /^(?:none|nothing|no)$/i.test(typed.trim()) ? { ok: true, value: none } : kind.read(typed, asking),
});

const optional = <T>(kind: Kind<T>, about: (w: Words['bucket']) => string): Option<T, false> => ({
  kind,
  needed: false,
  about: ({ bucket }) => about(bucket),
});

/** The options for a bucket's settings, when it is added and when it is changed. */
export const bucketOptions = {
  nick: optional(name(12, 'gg'), (w) => w.nick),
  pail: optional(volume(100, 250_000, 'l', '19l'), (w) => w.pail),
  volume: optional(volume(10, 250_000, 'l', '15l'), (w) => w.volume),
  gravity: optional(gravityWindow, (w) => w.gravity),
  seconds: optional(secondsWindow, (w) => w.seconds),
  cup: optional(cup, (w) => w.cup),
  solids: optional(number(1.5, 7, '2.6'), (w) => w.solids),
  rest: optional(time(hours(0.05), hours(24 * 14), 'h', '4h'), (w) => w.rest),
  fresh: optional(time(hours(1), hours(24 * 90), 'h', '7 days'), (w) => w.fresh),
  mesh: optional(mesh, (w) => w.mesh),
  use: optional(pick(bucketUses, { dip: 'dipping', brush: 'brushing', spray: 'spraying' }), (w) => w.use),
  cautions: optional(
    orNone<BucketCaution[], BucketCaution[]>(several(bucketCautions), []),
    (w) => w.cautions,
  ),
  recipe: optional(text(400, 'Gull Grey'), (w) => w.recipe),
  glaze: optional(text(60, 'Gull Grey'), (w) => w.glaze),
  cone: optional(orNone({ ...cone, example: '6' }, 'none' as const), (w) => w.cone),
  atmosphere: optional(orNone(name(40, 'oxidation'), 'none' as const), (w) => w.atmosphere),
  bodies: optional(orNone(name(120, 'stoneware, porcelain'), 'none' as const), (w) => w.bodies),
  rim: optional(length(50, 1500, 'cm', '28cm'), (w) => w.rim),
  bottom: optional(length(50, 1500, 'cm', '25cm'), (w) => w.bottom),
  height: optional(length(50, 1500, 'cm', '35cm'), (w) => w.height),
} as const;
