import { asks, type Reply } from '../../src/command/contract.ts';
import { bucket } from '../../src/command/kinds/bucket.ts';
import { volume } from '../../src/command/kinds/quantities.ts';
import { printLine } from '../../src/command/parseLine.ts';
import { blendBuckets } from '../../src/studio/blendBuckets.ts';
import { handAmount, volumeText } from '../../src/words/measures.ts';

/** What arithmetic on decimals adds to a pail that is just full, ml. */
const aHair = 1;

export const blendBatch = asks({
  name: 'blend',
  about: (w) => w.batch.blend,
  who: 'member',
  options: {
    first: { kind: bucket, needed: true, about: (w) => w.batch.first },
    second: { kind: bucket, needed: true, about: (w) => w.batch.second },
    amount: { kind: volume(1, 250_000, 'l', '2l'), needed: false, about: (w) => w.batch.amount },
  },
  async run(v, { words, book, now }) {
    const w = words.batch;
    const refuse = (title: Reply['title']): Reply => ({ kind: 'refusal', title, data: {} });
    if (v.first.no === v.second.no) return refuse(w.sameBucket);
    const { units } = await book.studio();
    const [into, from] = [v.first.settings, v.second.settings];
    const blend = blendBuckets(v.first, v.second, {
      now,
      ...(v.amount !== undefined && { amount: v.amount }),
    });
    switch (blend.kind) {
      case 'unmeasured':
        return refuse(w.unmeasured(blend.bucket.settings.name));
      case 'needs-volume':
        return refuse(w.needsVolume(blend.bucket.settings.name));
      case 'more-than-held':
        return refuse(w.moreThanHeld(from.name, blend.held, units));
      case 'blend': {
        const { gravity: window, pail } = into;
        const inside = window && blend.gravity >= window.low && blend.gravity <= window.high;
        const fits = pail === undefined || blend.volume <= pail + aHair;
        const poured = handAmount(blend.poured);
        return {
          kind: 'answer',
          title: w.blendTitle(into.name, from.name, blend.gravity, blend.volume, units),
          facts: [
            { label: [w.factGravity], text: w.within(blend.gravity, blend.u95) },
            {
              label: [w.factFlocculant],
              text: w.flocculant(blend.percentOfDry, blend.heptahydrate, blend.flocculantUnknown),
            },
          ],
          dont: fits ? [] : [w.doesNotFit(blend.volume, pail, units)],
          reasons: [
            ...w.blendSteps.map((text, i) => w.step(i + 1, text)),
            ...(window ? [w.intoWindow(into.name, window, inside === true)] : []),
          ],
          actions: fits
            ? [
                {
                  label: w.pouredIn(volumeText(poured, units)),
                  line: printLine(
                    ['added'],
                    {
                      bucket: String(v.first.no),
                      what: 'glaze',
                      amount: `${poured}ml`,
                      from: String(v.second.no),
                    },
                    v.first.seq,
                  ),
                  press: 'run',
                },
              ]
            : [],
          data: {
            waterMl: blend.water,
            powderGrams: blend.powder,
            gravity: blend.gravity,
            u95: blend.u95,
            volumeL: blend.volume / 1000,
            heptahydrateGrams: blend.heptahydrate,
            totalPercentOfDry: blend.percentOfDry,
            fits,
          },
        };
      }
    }
  },
});
