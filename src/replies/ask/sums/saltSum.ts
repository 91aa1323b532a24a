import { present } from '../../../present.ts';
import { gravityHeld } from '../../../studio/bucket/withoutFlagged.ts';
import { epsomToSaturate } from '../../../glaze/materials/epsomSolution.ts';
import { dryContent } from '../../../glaze/slurry/slurry.ts';
import { grams, gravity, type Grams, type Millilitres } from '../../../glaze/units.ts';
import { gravitiesIn, volumeIn } from '../../../parse/amountsIn.ts';
import { roomTemperature, saturatedSolutionWith } from '../../../studio/bucket/flocculantSolution.ts';
import { volumeNow } from '../../../studio/bucket/volumeNow.ts';
import { usualSolids } from '../../../studio/settings/usualSolids.ts';
import type { Text } from '../../../words/text/text.ts';
import type { Asking, Reply } from '../../../contract/contract.ts';
import { verdictReply } from '../../verdict/verdictReply.ts';
import type { Sum } from './sumAsked.ts';

/** Above this share of its dry powder a keeper looks at the bucket first (common practice). */
const muchPercent = 0.2;

/** A dipping glaze stands near this when nobody says its gravity (common practice). */
const usualGravity = gravity(1.45);

const number = (digits: string): number => Number(digits.replace(',', '.'));

/** “0.2 %”, “half a percent”. */
const percentIn = (heard: string): number | undefined => {
  const digits = /(?<![\d.,])(\d*[.,]?\d+)\s*(?:%|percent|per cent|pct)/.exec(heard)?.[1];
  if (digits !== undefined) return number(digits);
  const part = /\b(half|quarter) (?:of )?a (?:percent|%)/.exec(heard)?.[1];
  return part === undefined ? undefined : part === 'half' ? 0.5 : 0.25;
};

const litresIn: Record<string, number> = {
  l: 1,
  litre: 1,
  litres: 1,
  gal: 3.785411784,
  gallon: 3.785411784,
  gallons: 3.785411784,
};

/** “2 g per litre”: grams in a litre, and the words for it. */
const perLitreIn = (heard: string): { grams: number; said: string } | undefined => {
  const found =
    /(?<![\d.,])(\d*[.,]?\d+)\s*(?:g|grams)\s*(?:\/|per|to (?:the|a|each)|a|each|for (?:each|every))\s*(litres?|l|gallons?|gal)\b/.exec(
      heard,
    );
  const [, digits = '', unit = ''] = found ?? [];
  const litres = litresIn[unit];
  if (litres === undefined) return undefined;
  return {
    grams: number(digits) / litres,
    said: `${number(digits)} g per ${litres === 1 ? 'litre' : 'gallon'}`,
  };
};

/** Grams that saturate so much water. */
const saturatedSum = async (heard: string, { words, book }: Asking): Promise<Reply | undefined> => {
  const { units } = await book.studio();
  const water = volumeIn(heard, units);
  if (water === undefined) return undefined;
  const found = epsomToSaturate({ water: grams(water), temperature: roomTemperature });
  if (!found.ok) return undefined;
  return {
    kind: 'answer',
    title: words.sum.saturates(found.value, water, units),
    reasons: words.dose.solutionSteps,
    data: { sum: 'salt', heptahydrateGrams: found.value, volumeMl: water },
  };
};

/** Grams of Epsom salt for so much glaze or water at a strength. */
export const saltSum: Sum = async ({ heard, bucket }, asking) => {
  if (!/\bepsom\b|\bmagnesium sul/.test(heard)) return undefined;
  if (/\bsaturat/.test(heard)) return saturatedSum(heard, asking);
  const percent = percentIn(heard);
  const perLitre = perLitreIn(heard);
  if (percent === undefined && perLitre === undefined) return undefined;
  if (bucket?.hold) return verdictReply(bucket, asking);
  const { words, book, now } = asking;
  const w = words.sum;
  const { units } = await book.studio();
  // The volume is not the litre of “2 g per litre”.
  const volume: Millilitres | undefined =
    volumeIn(
      heard.replace(
        /(?:\/|per|to (?:the|a|each)|each|(?<=g |grams )a|for (?:each|every))\s*(?:1 |one )?(?:litres?|l|gallons?|gal)\b/g,
        ' ',
      ),
      units,
    ) ??
    (bucket && volumeNow(bucket, now)?.value);
  if (volume === undefined) return undefined;
  const ofWater = /\bsolution\b|\bof water\b|\bin water\b/.test(heard) && !bucket;
  const slurry = gravitiesIn(heard)[0]?.value ?? gravityHeld(bucket) ?? usualGravity;
  const solids = bucket?.settings.solids ?? usualSolids;
  const content = dryContent({ slurry, particleGravity: solids });
  if (!content.ok) return undefined;
  const dry = grams((content.value * volume) / 1000);
  const answer = (): { salt: Grams; of: Text } => {
    if (percent === undefined)
      return {
        salt: grams(((perLitre?.grams ?? 0) * volume) / 1000),
        of: w.saltPer(perLitre?.said ?? '', volume, units),
      };
    // By weight of the solution: p in 100, so the water is the other 100 − p.
    if (ofWater)
      return { salt: grams((volume * percent) / (100 - percent)), of: w.saltOfWater(percent, volume, units) };
    return { salt: grams((dry * percent) / 100), of: w.saltOfDry(percent, dry) };
  };
  if (percent !== undefined && percent > (ofWater ? 40 : 5)) return undefined;
  const { salt, of } = answer();
  const ofGlaze = !ofWater;
  const much = ofGlaze && salt > (dry * muchPercent) / 100;
  const told = w.salt(salt, of);
  return {
    kind: 'answer',
    title: bucket ? words.verdict.headline(bucket.settings.name, told) : told,
    facts: present([
      ofGlaze && { label: w.factSolution, text: w.asSolution(saturatedSolutionWith(salt), units) },
      ofGlaze &&
        percent !== undefined && {
          label: w.factIfWater,
          text: w.ifWater((volume * percent) / (100 - percent)),
        },
    ]),
    dont: ofGlaze ? words.dose.dont() : [],
    cautions: much ? [w.muchSalt] : [],
    reasons: present([
      ofGlaze && percent !== undefined && w.dryAssumed(slurry, solids),
      ofGlaze && w.notAtOnce,
    ]),
    data: {
      sum: 'salt',
      heptahydrateGrams: salt,
      volumeMl: volume,
      ...(ofGlaze && percent !== undefined && { dryGrams: dry }),
      ...(bucket && { bucket: bucket.no }),
    },
  };
};
