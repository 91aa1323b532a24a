import type { NoDose } from '../../studio/verdict/adviseDose.ts';
import { doseText } from '../text/doseText.ts';
import { massText, percentText, volumeText } from '../text/measures.ts';
import { pastCheckpoint } from './pastCheckpoint.ts';
import type { BucketUse } from '../../studio/settings/bucketSettings.ts';
import { said, t, type Text } from '../text/text.ts';

const ml = (value: number): string => `${Number(value.toFixed(1))} ml`;

const none: Record<NoDose, string> = {
  'hands-off': 'Nothing goes in now.',
  creamy: 'No more flocculant: it flows as it should.',
  thick: 'No flocculant: it is thick already.',
  'water-first':
    'No flocculant yet: gravity is above its window, so water comes first. Then look at the flow again.',
  'too-wet': 'No flocculant: there is too much water in it, and thickening would only hide that.',
  unmeasured: 'Measure it first: nobody knows how much powder is in it.',
};

export const doseWords = {
  about: 'The next flocculant dose, how to make the solution, or deflocculant',
  bucket: 'Which bucket: name, nickname or number',
  what: 'What you want to know about',
  water: 'Water for the solution',
  temperature: 'Temperature of the room where the jar stands',
  which: t`Which bucket? Add bucket: and its name. To make the solution: /dose what:solution water:1l.`,

  ownThickener: (name: string, use: BucketUse): Text =>
    t`${said(name)} is for ${[use]}: what makes it thick or thin is its gum, not flocculant. Ask its keeper.`,
  none: (why: NoDose): Text => [none[why]],
  now: (ml: number): Text =>
    t`Add ${[doseText(ml)]} of flocculant solution, stir, wait 10 minutes, look again.`,
  later: (first: Text, ml: number): Text =>
    t`${first} If it is still thin after that, add ${[doseText(ml)]} of flocculant solution.`,
  perLitre: (ml: number): Text =>
    t`${[String(Number(ml.toFixed(2)))]} ml of flocculant solution for every litre in the pail, if it is thin. Say in a reading how full the pail is, and I can work it out for the whole pail.`,
  noChange: t`Stop: the last two doses changed nothing, so flocculant is not what it needs. Is there clay in it? Ask a keeper to look.`,
  learned: ({ low, high }: { low: number; high?: number }, doses: number): Text =>
    high === undefined
      ? t`Learned from the readings before and after ${doses} doses: it takes at least ${[ml(low)]} to reach the middle of its window. The most it may take is not known yet.`
      : t`Learned from the readings before and after ${doses} doses: it takes ${[ml(low)]} to ${[ml(high)]} to reach the middle of its window, 9 times out of 10. Never more than two usual doses at once.`,
  notLearned: t`This is the usual next dose. To learn this bucket’s own, the bot needs two doses, with the flow timed by the same cup before and after each.`,
  checkpoint: (percent: number): Text =>
    t`Stop: ${[percentText(percent)]} of its dry weight has gone in since the last fresh batch. Above 0.2 %, a keeper looks at it first.`,
  pastCheckpoint,
  factDose: 'This dose',
  dose: (grams: number, percent: number): Text =>
    t`${[massText(grams)]} of Epsom salt, ${[percentText(percent)]} of its dry weight`,
  factSoFar: 'So far',
  soFar: (percent: number | undefined, doses: number, unknown: boolean): Text => {
    if (doses === 0) return t`no dose yet`;
    const counted = doses === 1 ? 'one dose' : `${doses} doses`;
    const share =
      percent === undefined ? '' : `, ${unknown ? 'at least ' : ''}${percentText(percent)} of its dry weight`;
    return t`${[counted]} since the last fresh batch${[share]}${[unknown ? '; one was logged without its amount' : '']}`;
  },
  dont: (): Text[] => [
    t`Don’t go on once it is creamy. If two doses change nothing, stop and tell a keeper.`,
    t`Don’t put dry salt in, and don’t use gum against settling.`,
  ],
  hardWater: t`The water here is hard, which flocculates by itself. Expect to need less.`,
  strength: (gramsPerSpoon: number, temperature: number): Text =>
    t`In saturated solution (with crystals left at the bottom), a teaspoon holds ${[gramsPerSpoon.toFixed(1)]} g of Epsom salt at ${[String(temperature)]} °C.`,
  drops: t`For a small jar, count drops: 20 make a millilitre.`,

  keepersOnly: t`Only keepers add deflocculant: too much can’t be taken out again. Ask one.`,
  deflocculantNotAsked: (first: Text): Text => t`It doesn't need deflocculant now. ${first}`,
  tooMuchLoosened: t`With too much, it is thin and settles hard, and only flocculant brings it back.`,
  product: (what: string | undefined): Text =>
    what === undefined
      ? t`Always use the same deflocculant, at the same strength. A keeper can note it: /studio set deflocculant:.`
      : t`The deflocculant here: ${said(what)}. 20 drops are a millilitre.`,

  solution: (crystals: number, water: number): Text =>
    t`Stir ${[massText(crystals)]} of Epsom salt into ${[volumeText(water)]} of warm water, and let it cool.`,
  factDissolves: 'Dissolves',
  dissolves: (grams: number, temperature: number): Text =>
    t`${[massText(grams)]} at ${[String(temperature)]} °C; the rest stays at the bottom`,
  solutionSteps: [
    t`Keep some crystals at the bottom. As long as they are there, the strength is right, even when water evaporates.`,
    t`When they are gone, add salt and stir until some no longer dissolves.`,
    t`Take clear solution from the top. Label the jar: Epsom salt solution, saturated, for glaze.`,
  ],
};
