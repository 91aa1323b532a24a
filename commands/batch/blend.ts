import { definedOnly } from '../../src/definedOnly.ts';
import { asks, needed, optional, refusal, toRun } from '../../src/contract/contract.ts';
import { broughtByGlaze } from '../../src/replies/bucket/broughtByGlaze.ts';
import { mixedCautions } from '../../src/replies/bucket/mixedCautions.ts';
import { markedCautions } from '../../src/studio/verdict/verdictCautions.ts';
import { bucket } from '../../src/contract/kinds/bucket.ts';
import { volume } from '../../src/contract/kinds/quantities.ts';
import { printLine } from '../../src/contract/parseLine.ts';
import { blendBuckets } from '../../src/studio/batch/blendBuckets.ts';
import { headroom, usablePart } from '../../src/studio/verdict/headroom.ts';
import { millilitres } from '../../src/glaze/units.ts';
import { handAmount, volumeText } from '../../src/words/text/measures.ts';

/** Rounding error of decimal sums on a pail that is just full, in ml. */
const roundingError = 1;

export const blendBatch = asks({
  name: 'blend',
  about: (w) => w.batch.blend,
  who: 'member',
  options: {
    first: needed(bucket, (w) => w.batch.first),
    second: needed(bucket, (w) => w.batch.second),
    amount: optional(volume(1, 250_000, 'l', '2l'), (w) => w.batch.amount),
  },
  async run(v, { words, book, now }) {
    const w = words.batch;
    if (v.first.no === v.second.no) return refusal(w.sameBucket);
    const { units } = await book.studio();
    const [into, from] = [v.first.settings, v.second.settings];
    const blend = blendBuckets(v.first, v.second, { now, ...definedOnly({ amount: v.amount }) });
    const brings = broughtByGlaze(v.first, v.second, words);
    switch (blend.kind) {
      case 'unmeasured':
        return refusal(w.unmeasured(blend.bucket.settings.name));
      case 'needs-volume':
        return refusal(w.needsVolume(blend.bucket.settings.name));
      case 'more-than-held':
        return refusal(w.moreThanHeld(from.name, blend.held, units));
      case 'blend': {
        const { gravity: window, pail } = into;
        const room =
          pail === undefined || blend.volume <= usablePart * pail + roundingError
            ? undefined
            : headroom(pail, blend.held);
        const fits = room === undefined;
        const amount = room === undefined ? blend.poured : Math.min(room, blend.poured);
        const poured = handAmount(amount);
        const less =
          !fits && poured > 0 && blendBuckets(v.first, v.second, { now, amount: millilitres(poured) });
        const part = less && less.kind === 'blend' ? less : undefined;
        const offered = fits ? blend : part;
        const told = offered ?? blend;
        const added = {
          bucket: String(v.first.no),
          what: 'glaze',
          amount: `${poured}ml`,
          from: String(v.second.no),
        };
        const line = printLine(['added'], added, v.first.seq);
        const inside = window && offered && offered.gravity >= window.low && offered.gravity <= window.high;
        return {
          kind: 'answer',
          title:
            fits || pail === undefined
              ? w.blendTitle(into.name, from.name, blend, units)
              : w.tooMuch(into.name, from.name, { made: blend, pail, part }, units),
          cautions: [
            ...(brings ? mixedCautions(v.first, brings, { words, source: v.second, glaze: true }) : []),
            ...markedCautions(from).map(words.verdict.caution),
          ],
          facts: [
            { label: [w.factGravity], text: w.within(told.gravity, told.u95) },
            {
              label: [w.factFlocculant],
              text: w.flocculant(told.percentOfDry, told.heptahydrate, told.flocculantUnknown),
            },
          ],
          reasons: [
            ...w.blendSteps.map((text, i) => w.step(i + 1, text)),
            ...(window && offered ? [w.intoWindow(into.name, window, inside === true)] : []),
          ],
          actions: offered ? [toRun(w.pouredIn(volumeText(poured, units)), line)] : [],
          data: {
            waterMl: blend.water,
            powderGrams: blend.powder,
            gravity: blend.gravity,
            u95: blend.u95,
            volumeL: blend.volume / 1000,
            heptahydrateGrams: blend.heptahydrate,
            totalPercentOfDry: blend.percentOfDry,
            fits,
            brings: { cautions: brings?.cautions ?? [], hold: brings?.hold !== undefined },
            ...(!fits && { fitsMl: amount }),
          },
        };
      }
    }
  },
});
