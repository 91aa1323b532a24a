import { asks } from '../../src/command/contract.ts';
import { bucket } from '../../src/command/kinds/bucket.ts';
import { length, percent } from '../../src/command/kinds/quantities.ts';
import { text } from '../../src/command/kinds/texts.ts';
import { verdictReply } from '../../src/command/verdictReply.ts';
import { decide } from '../../src/studio/decide.ts';
import { dipTime } from '../../src/studio/dipTime.ts';

export const timeToDip = asks({
  name: 'time',
  about: (w) => w.dip.time,
  who: 'member',
  form: ['bucket', 'thickness', 'absorption', 'body', 'wall'],
  options: {
    bucket: { kind: bucket, needed: true, about: (w) => w.dip.bucket },
    thickness: { kind: length(0.05, 10, 'mm', '1mm'), needed: true, about: (w) => w.dip.thickness },
    absorption: { kind: percent(0.1, 40, '12'), needed: false, about: (w) => w.dip.absorption },
    body: { kind: text(40, 'buff stoneware'), needed: false, about: (w) => w.dip.body },
    wall: { kind: length(0.5, 100, 'mm', '6mm'), needed: false, about: (w) => w.dip.wall },
    wet: { kind: percent(0, 100, '20'), needed: false, about: (w) => w.dip.wet },
  },
  async run(v, asking) {
    const { words, book, now, role } = asking;
    const w = words.dip;
    const verdict = decide(v.bucket, { now, role });
    if (verdict.step === 'on-hold') return { ...(await verdictReply(v.bucket, asking)), kind: 'refusal' };
    const found = dipTime(
      v.bucket,
      {
        thickness: v.thickness,
        ...(v.absorption !== undefined && { absorption: v.absorption }),
        ...(v.body !== undefined && { body: v.body }),
        ...(v.wall !== undefined && { wall: v.wall }),
        ...(v.wet !== undefined && { filled: v.wet / 100 }),
      },
      now,
    );
    if (found.kind !== 'dip')
      return {
        kind: 'refusal',
        title: w.refusal(found),
        data: { why: found.kind, ...(found.kind === 'wall' && { mostMm: found.most }) },
      };
    const { units } = await book.studio();
    const { seconds, interval, fit, range, gravity, tileAbsorption, wallMost } = found;
    return {
      kind: 'answer',
      title: words.verdict.headline(v.bucket.settings.name, w.dip(seconds, v.thickness)),
      facts: [
        { label: [w.factInterval], text: w.interval(interval) },
        { label: [w.factTiles], text: w.tilesFact(fit.tiles, range.low, range.high) },
        { label: [w.factGravity], text: w.gravityFact(gravity) },
      ],
      dont: [...(verdict.step === 'use' ? [] : [w.notReady(words.verdict.title(verdict, units))]), w.dont],
      cautions: verdict.cautions.map(words.verdict.caution),
      reasons: [
        w.line(fit),
        ...(v.absorption !== undefined && tileAbsorption !== undefined && v.absorption !== tileAbsorption
          ? [w.absorbs(v.absorption, tileAbsorption)]
          : []),
        ...(wallMost !== undefined ? [w.wallNear(wallMost)] : []),
        w.usualCoat,
      ],
      data: {
        seconds,
        interval: { low: interval.low, high: interval.high ?? null },
        basis: 'tiles',
        tiles: fit.tiles,
        intercept: fit.intercept,
        slope: fit.slope,
        gravity,
        ...(wallMost !== undefined && { wallMostMm: wallMost }),
      },
    };
  },
});
