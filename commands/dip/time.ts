import { definedOnly } from '../../src/definedOnly.ts';
import { asks, needed, optional } from '../../src/contract/contract.ts';
import { dipTimeReply } from '../../src/replies/piece/dipTimeReply.ts';
import { bucket } from '../../src/contract/kinds/bucket.ts';
import { length, percent } from '../../src/contract/kinds/quantities.ts';
import { text } from '../../src/contract/kinds/texts.ts';

export const timeToDip = asks({
  name: 'time',
  about: (w) => w.dip.time,
  who: 'member',
  form: ['bucket', 'thickness', 'absorption', 'body', 'wall'],
  options: {
    bucket: needed(bucket, (w) => w.dip.bucket),
    thickness: needed(length(0.05, 10, 'mm', '1mm'), (w) => w.dip.thickness),
    absorption: optional(percent(0.1, 40, '12'), (w) => w.dip.absorption),
    body: optional(text(40, 'buff stoneware'), (w) => w.dip.body),
    wall: optional(length(0.5, 100, 'mm', '6mm'), (w) => w.dip.wall),
    wet: optional(percent(0, 100, '20'), (w) => w.dip.wet),
  },
  run({ bucket, thickness, absorption, body, wall, wet }, asking) {
    const filled = wet === undefined ? undefined : wet / 100;
    return dipTimeReply(bucket, { thickness, ...definedOnly({ absorption, body, wall, filled }) }, asking);
  },
});
