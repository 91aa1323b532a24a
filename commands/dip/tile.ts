import { definedOnly } from '../../src/definedOnly.ts';
import { logs, needed, optional, refusal } from '../../src/contract/contract.ts';
import { entryStamp } from '../../src/contract/entryStamp.ts';
import { bucket } from '../../src/contract/kinds/bucket.ts';
import { dipSeconds, length, percent, statedGravity } from '../../src/contract/kinds/quantities.ts';
import { text } from '../../src/contract/kinds/texts.ts';
import { whenAndNote } from '../../src/contract/kinds/usualOptions.ts';
import { predictedNow } from '../../src/studio/bucket/predictedNow.ts';

export const dipTile = logs({
  name: 'tile',
  about: (w) => w.dip.tile,
  who: 'member',
  form: ['bucket', 'seconds', 'thickness', 'absorption', 'body'],
  options: {
    bucket: needed(bucket, (w) => w.dip.bucket),
    seconds: needed(dipSeconds, (w) => w.dip.seconds),
    thickness: needed(length(0.05, 10, 'mm', '0.8mm'), (w) => w.dip.thickness),
    absorption: optional(percent(0.1, 40, '12'), (w) => w.dip.absorption),
    body: optional(text(40, 'buff stoneware'), (w) => w.dip.body),
    gravity: optional(statedGravity, (w) => w.dip.gravity),
    ...whenAndNote,
  },
  async run(v, context) {
    const { words, book } = context;
    const w = words.dip;
    if (v.gravity !== undefined && (v.gravity <= 1 || v.gravity > 2.5))
      return refusal(words.option.gravityOutside(String(v.gravity)));
    const stamp = entryStamp(context, v);
    const known = v.gravity ?? predictedNow(v.bucket, stamp.at)?.value;
    const { entry, state } = await book.log(
      v.bucket.no,
      {
        kind: 'tile',
        seconds: v.seconds,
        thickness: v.thickness,
        ...definedOnly({ absorption: v.absorption, body: v.body, gravity: known }),
      },
      stamp,
    );
    const body = v.body?.toLowerCase();
    const tiles = (state.tiles ?? []).filter((tile) => tile.body?.toLowerCase() === body);
    const times = tiles.map(({ seconds }) => seconds);
    return {
      kind: 'answer',
      title: words.verdict.headline(v.bucket.settings.name, w.tileLogged(v.seconds, v.thickness, entry.id)),
      reasons: [
        w.moreTiles(tiles.length, Math.max(...times) - Math.min(...times) < 0.1),
        w.measureDry,
        ...(known === undefined ? [w.noTime({ kind: 'no-gravity' })] : []),
      ],
      data: { entry: entry.id, tiles: tiles.length, ...definedOnly({ gravity: known }) },
    };
  },
});
