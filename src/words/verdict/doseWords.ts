import type { NoDose } from '../../studio/verdict/adviseDose.ts';
import { doseText } from '../text/doseText.ts';
import { massText, percentText, volumeText } from '../text/measures.ts';
import { pastCheckpoint } from './pastCheckpoint.ts';
import { ours, t, type Text } from '../text/text.ts';

const ml = (value: number): string => `${Number(value.toFixed(1))} ml`;

const none: Record<NoDose, string> = {
  'hands-off': 'Nothing goes in now.',
  creamy: 'No more flocculant: it flows as it should.',
  thick: 'No flocculant: it is thick already.',
  'water-first':
    'No flocculant yet: it is above its window, so water comes first. Then look at the flow again.',
  'too-wet': 'No flocculant: there is too much water in it, and thickening would only hide that.',
  unmeasured: 'Measure it first: nobody knows how much powder is in it.',
};

export const doseWords = {
  about: 'The next flocculant step, the solution for it, or deflocculant',
  bucket: 'Which bucket: name, nickname or number',
  what: 'flocculant, deflocculant (keepers), or solution: how to make it',
  water: 'Water for the solution',
  temperature: 'Temperature of the room that the jar stands in',
  which: ours('Which bucket? Add bucket: and its name. To make the solution: /dose what:solution water:1l.'),

  none: (why: NoDose): Text => [none[why]],
  now: (ml: number): Text =>
    t`Add ${[doseText(ml)]} of flocculant solution, stir, wait 10 minutes, look again.`,
  later: (first: Text, ml: number): Text =>
    t`${first} If it is thin then: ${[doseText(ml)]} of flocculant solution.`,
  perLitre: (ml: number): Text =>
    t`${[String(Number(ml.toFixed(2)))]} ml of flocculant solution for every litre in the pail, if it is thin. Say the gap from rim to glaze, and I'll give it for the pail.`,
  noChange: ours(
    'Stop: the last two doses changed nothing. It is not flocculation that is missing; is there clay in it? A keeper looks at it.',
  ),
  learned: ({ low, high }: { low: number; high?: number }, doses: number): Text =>
    high === undefined
      ? t`Learned from its readings round ${doses} doses: at least ${[ml(low)]} to mid-window; how much at most, they don't say yet.`
      : t`Learned from its readings round ${doses} doses: ${[ml(low)]} to ${[ml(high)]} to mid-window, nine times in ten. Never more than two rungs at once.`,
  notLearned: ours(
    'The ladder’s next rung. Not enough data to learn from: two doses, with the flow timed by one cup before and after each.',
  ),
  checkpoint: (percent: number): Text =>
    t`Stop: ${[percentText(percent)]} of its dry mass has gone in since the last remake. Past 0.2 % a keeper looks first.`,
  pastCheckpoint,
  factDose: 'This dose',
  dose: (grams: number, percent: number): Text =>
    t`${[massText(grams)]} of Epsom salt, ${[percentText(percent)]} of its dry mass`,
  factSoFar: 'So far',
  soFar: (percent: number | undefined, doses: number, unknown: boolean): Text => {
    const counted = doses === 0 ? t`none` : t`${doses === 1 ? ['one dose'] : [`${doses} doses`]}`;
    const share = doses === 0 || percent === undefined ? [] : t`, ${[percentText(percent)]} of its dry mass`;
    return t`${counted}${share} since the last remake${[unknown ? '; at least: one was logged without its amount' : '']}`;
  },
  dont: (): Text[] => [
    ours('Don’t go on once it is creamy. Two doses with no change: stop, and tell a keeper.'),
    ours('Don’t put dry salt in, and no gum against settling.'),
  ],
  hardWater: ours('The water here is hard, and that flocculates by itself: expect to need less.'),
  strength: (gramsPerSpoon: number, temperature: number): Text =>
    t`Saturated solution, crystals left at the bottom: a teaspoon holds ${[gramsPerSpoon.toFixed(1)]} g of Epsom salt at ${[String(temperature)]} °C.`,
  drops: ours('Small jar: by drops, 20 to a millilitre.'),

  keepersOnly: ours('Deflocculant is keepers’ hands: too much can’t be taken out again. Ask one.'),
  deflocculantNotAsked: (first: Text): Text => t`It doesn't ask for deflocculant now. ${first}`,
  deflocculant: ours(
    'Deflocculant, one drop at a time: stir a minute after each, look, stop while it is still a little thick.',
  ),
  deflocculantSteps: [
    ours('Take a cup of the glaze and try it there first: that shows how far a drop goes.'),
    ours('It goes on loosening for minutes after: wait before the next drop.'),
    ours('Over the mark it is thin and settles hard, and only flocculant brings it back.'),
  ],
  dropped: (): Text => ['I added a drop'],

  solution: (crystals: number, water: number): Text =>
    t`Stir ${[massText(crystals)]} of Epsom salt into ${[volumeText(water)]} of warm water, and let it cool.`,
  factDissolves: 'Dissolves',
  dissolves: (grams: number, temperature: number): Text =>
    t`${[massText(grams)]} at ${[String(temperature)]} °C; the rest lies at the bottom`,
  solutionSteps: [
    ours(
      'Crystals must always lie at the bottom: as long as they do, its strength is right, even as water dries out of it.',
    ),
    ours('When they are gone, add more salt and stir until some stays.'),
    ours('Take it from the top, clear. Label the jar: Epsom salt solution, saturated, for glaze.'),
  ],
};
