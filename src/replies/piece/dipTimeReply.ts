import { present } from '../../present.ts';
import { fact } from '../../contract/replyParts.ts';
import { definedOnly } from '../../definedOnly.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { decide } from '../../studio/verdict/decide.ts';
import { isForDipping } from '../../studio/verdict/judgedBy.ts';
import { dipTime, type CoatWanted } from '../../studio/piece/dipTime.ts';
import { refusal, type Asking, type Reply } from '../../contract/contract.ts';
import { verdictReply } from '../verdict/verdictReply.ts';

/** How long to dip for a wanted thickness. If the bucket is on hold, its verdict instead. */
export const dipTimeReply = async (
  state: BucketState,
  wanted: CoatWanted,
  asking: Asking,
): Promise<Reply> => {
  const { words, now, role } = asking;
  const w = words.dip;
  const verdict = decide(state, { now, role });
  if (verdict.step === 'on-hold') return { ...(await verdictReply(state, asking)), kind: 'refusal' };
  const { name, use } = state.settings;
  if (!isForDipping({ use })) return refusal(w.notDipped(name, use), { why: 'use', use });
  const found = dipTime(state, wanted, now);
  if (found.kind !== 'dip')
    return refusal(w.noTime(found), {
      why: found.kind,
      ...(found.kind === 'wall' && { mostMm: found.most }),
    });
  const { seconds, interval, fit, range, gravity, tileAbsorption, wallMost } = found;
  const { absorption } = wanted;
  return {
    kind: 'answer',
    title: words.verdict.headline(state.settings.name, w.dip(seconds, wanted.thickness)),
    facts: [
      fact(w.factInterval, w.interval(interval)),
      fact(w.factTiles, w.tilesFact(fit.tiles, range.low, range.high)),
      fact(w.factGravity, w.gravityFact(gravity)),
    ],
    dont: present([
      verdict.step !== 'use' && w.notReady(words.bucket.stepName(verdict.keeperStep ?? verdict.step)),
      w.dont,
    ]),
    cautions: verdict.cautions.map(words.verdict.caution),
    reasons: present([
      // How it was worked out is for whoever keeps the bucket.
      role === 'keeper' && w.line(fit),
      absorption !== undefined &&
        tileAbsorption !== undefined &&
        absorption !== tileAbsorption &&
        w.absorbs(absorption, tileAbsorption),
      wallMost !== undefined && w.wallNear(wallMost),
      role === 'keeper' && w.usualCoat,
    ]),
    data: {
      seconds,
      interval: { low: interval.low, high: interval.high ?? null },
      basis: 'tiles',
      tiles: fit.tiles,
      intercept: fit.intercept,
      slope: fit.slope,
      gravity,
      ...definedOnly({ wallMostMm: wallMost }),
    },
  };
};
