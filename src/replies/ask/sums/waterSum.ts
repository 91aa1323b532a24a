import { present } from '../../../present.ts';
import { gravityHeld } from '../../../studio/bucket/withoutFlagged.ts';
import { waterToAdd, waterToDrawOff } from '../../../glaze/slurry/massBalance.ts';
import { gravity, millilitres, type Gravity } from '../../../glaze/units.ts';
import { gravitiesIn, volumeIn } from '../../../parse/amountsIn.ts';
import type { BucketState } from '../../../studio/bucket/bucketState.ts';
import { volumeNow } from '../../../studio/bucket/volumeNow.ts';
import { markedCautions } from '../../../studio/verdict/verdictCautions.ts';
import { eachPail } from '../../../words/text/measures.ts';
import { verdictReply } from '../../verdict/verdictReply.ts';
import { stateFact } from '../stateFact.ts';
import type { Sum } from './sumAsked.ts';

const meansWater =
  /\bwater\b|\bthin|\bdilut|\blower|\bget\b|\bbring|\btake\b|\btook\b|\bgo\b|\bdrop|\bhow much\b|\bi (?:want|need)\b/;
const meansOff = /\boff\b|\bout\b|\bremove|\bdraw|\bpour away/;

/** Which of the gravities is the wanted one: the one after “to” or “for”. */
const isWanted = (before: string): boolean =>
  /\b(?:to|for|at least|target|want(?:ed)?|reach) (?:get |have |be )?(?:a |an )?(?:gravity |sg )?(?:of )?$/.test(
    before,
  );
const isNow = (before: string): boolean =>
  /\b(?:from|is|its|at|now|reads|reading|currently) (?:a |an )?(?:gravity |sg )?(?:of )?$/.test(before);

interface Way {
  from: Gravity;
  to: Gravity;
  logged: boolean;
}

/** “From 150 to 145”: a hydrometer's stem and hurried people leave the point out. */
const withPoints = (heard: string): string =>
  heard.replace(
    /\bfrom (1\d\d) (?:down |up )?to (1\d\d)\b(?!\s*(?:g|ml|l)\b)/,
    (_, a: string, b: string) => `from ${Number(a) / 100} to ${Number(b) / 100}`,
  );

const wayIn = (heard: string, bucket: BucketState | undefined): Way | undefined => {
  const found = gravitiesIn(heard);
  const [first, second] = found;
  if (!first || found.length > 2) return undefined;
  if (second) {
    const turned = isWanted(first.before) || (isNow(second.before) && !isNow(first.before));
    const [from, to] = turned ? [second.value, first.value] : [first.value, second.value];
    return { from, to, logged: false };
  }
  const now = gravityHeld(bucket);
  if (now === undefined || !isWanted(first.before)) return undefined;
  return { from: gravity(Number(now.toFixed(3))), to: first.value, logged: true };
};

/** Water to take so much glaze from one gravity to another. */
export const waterSum: Sum = async ({ heard: asTyped, bucket }, asking) => {
  const heard = withPoints(asTyped);
  const way = wayIn(heard, bucket);
  if (!way || !meansWater.test(heard) || /\bdry\b|\bpowder\b|\bmix(?:ed)? with\b|\bblend/.test(heard))
    return undefined;
  // What was read before a cake, frost or a sieving tells nothing of it now.
  if (bucket && (bucket.hold || (way.logged && bucket.voided))) return verdictReply(bucket, asking);
  const { words, book, now } = asking;
  const w = words.sum;
  const { units } = await book.studio();
  const { from, to } = way;
  const said = volumeIn(heard, units);
  const logged = bucket && said === undefined ? volumeNow(bucket, now)?.value : undefined;
  const each = eachPail(units);
  const known = said ?? logged;
  const volume = known ?? millilitres(1000 * each.litres);
  const off = to > from || (to === from && meansOff.test(heard));
  const found = off ? waterToDrawOff({ volume, from, to }) : waterToAdd({ volume, from, to });
  if (!found.ok) return undefined;
  const ml = found.value;
  const title =
    from === to
      ? w.waterStandsAt(to)
      : known === undefined
        ? (off ? w.drawOffEach : w.waterEach)(ml, each.name, units)
        : (off ? w.drawOff : w.water)(ml, units);
  return {
    kind: 'answer',
    title: bucket ? words.verdict.headline(bucket.settings.name, title) : title,
    facts: present([
      { label: w.factSum, text: w.waterSum(volume, from, to, units) },
      bucket && (await stateFact(bucket, asking)),
    ]),
    dont: from === to ? [] : [off ? words.verdict.dont('water-out') : words.verdict.dont('all-at-once')],
    cautions: present([
      ...(bucket ? markedCautions(bucket.settings).map(words.verdict.caution) : []),
      off && words.verdict.caution('drawn-water'),
    ]),
    reasons: present([
      from !== to && !off && w.half,
      way.logged && w.gravityLogged(from),
      logged !== undefined && w.volumeLogged(logged, units),
      said !== undefined && w.volumeAsSaid,
      w.massBalance,
    ]),
    data: {
      sum: 'water',
      from,
      to,
      [off ? 'drawOffMl' : 'waterMl']: known === undefined ? null : ml,
      mlPerLitre: (ml / volume) * 1000,
      ...(known !== undefined && { volumeMl: known }),
      ...(bucket && { bucket: bucket.no }),
    },
  };
};
