import type { Window } from '../../studio/settings/bucketSettings.ts';
import type { CorrectionWay } from '../../studio/batch/correctBucket.ts';
import type { UnitSystem } from '../../studio/settings/studio.ts';
import {
  gravityText,
  gravityWithin,
  handAmount,
  volumeText,
  volumeTo,
  windowText,
} from '../text/measures.ts';
import { addWater } from '../verdict/verdictTitle.ts';
import type { Pour } from '../text/pour.ts';
import { said, t, type Text } from '../text/text.ts';

const wayWords: Record<CorrectionWay, string> = {
  water: 'water in',
  'draw-off': 'clear water off',
  evaporate: 'letting water evaporate',
  dry: 'dry batch in',
  blend: 'another bucket in',
};

export const correctWords = {
  way: wayWords,
  inWindow: (value: number, u95: number, window: Window<number>): Text =>
    t`Nothing to correct: ${[gravityWithin(value, u95)]} is inside its window ${[windowText(window)]}, as far as the reading can tell.`,
  wrongWay: (band: 'low' | 'high', by: CorrectionWay): Text =>
    band === 'high'
      ? t`It is above its window: ${[wayWords[by]]} would make that worse. It needs water, or a thinner bucket blended in.`
      : t`It is below its window: ${[wayWords[by]]} would make that worse. Draw clear water off, add dry batch, or blend a thicker bucket in.`,
  gel: t`It is gelled, and a gel does not settle, so there is no clear water to draw off. Add dry batch, then deflocculant.`,
  otherCannot: (name: string, other: number, wanted: number): Text =>
    t`${said(name)} is at ${[gravityText(other)]}: no amount of it brings this one to ${[gravityText(wanted)]}.`,
  needsOther: t`Which bucket do you want to blend in? Add with: and its name.`,
  correctTitle: (
    way: CorrectionWay,
    { amount, each }: Pour,
    { half, other }: { half: boolean; other: string },
  ): Text => {
    switch (way) {
      case 'water':
        return addWater({ amount, each }, half);
      case 'draw-off':
        return t`Draw off ${[amount]} of clear water${[each]} after a rest, stir, then measure.`;
      case 'evaporate':
        return t`Leave the lid off until ${[amount]} of water${[each]} has evaporated, stir, then measure.`;
      case 'dry':
        return t`Stir in ${[amount]} of dry batch${[each]}, then measure.`;
      case 'blend':
        return t`Pour in ${[amount]} of ${said(other)}${[each]}, stir, then measure.`;
    }
  },
  /** More of the other bucket than leaves room to stir. */
  ladleFirst: (
    other: string,
    { ladle, pour, fits }: { ladle: number; pour: number; fits: number },
    units: UnitSystem,
  ): Text => {
    const hand = (ml: number) => volumeText(handAmount(ml), units);
    const now =
      handAmount(fits) > 0
        ? `Only ${hand(fits)} fits now, too little to reach the window.`
        : 'The pail is full.';
    return t`Ladle ${[hand(ladle)]} out first, then pour in ${[hand(pour)]} of ${said(other)}, stir and measure. ${[now]}`;
  },
  falls: (why: 'other-empty' | 'held-back', other: string, title: Text): Text =>
    why === 'other-empty'
      ? t`${title} That is all there is of ${said(other)}, and it is not enough to reach the window.`
      : t`${title} It will need more after that; a more exact reading will tell how much.`,
  ladled: (amount: string): Text => t`I ladled ${[amount]} out`,
  /** What is keepers' hands, said to a member. */
  askKeeper: (way: 'draw-off' | 'dry', { amount, each }: Pour): Text =>
    way === 'dry'
      ? t`Ask a keeper to stir in ${[amount]} of dry batch${[each]}.`
      : t`Ask a keeper to draw off ${[amount]} of clear water${[each]}.`,
  askKeeperFull: t`Ask a keeper: the pail is full, so clear water has to come off before dry batch fits in.`,
  firstThen: (first: readonly ('sieve' | 'stir')[], title: Text): Text =>
    first.includes('sieve')
      ? t`Sieve and stir it first. Then: ${title}`
      : first.length > 0
        ? t`Stir it first. Then: ${title}`
        : title,
  keepersHands: t`Only keepers add dry batch or draw water off. The amounts are ready: ask a keeper.`,
  noRoom: t`The pail is full: ladle some glaze out first.`,
  factExpected: 'Expect next',
  factNow: 'Now',
  expected: (value: number, u95: number, volume: { value: number; u95: number }, units: UnitSystem): Text =>
    t`${[gravityWithin(value, u95)]}, and ${[volumeTo(volume.value, volume.u95, units)]} in the pail`,
  correctSteps: (way: CorrectionWay): Text[] => {
    const measure: Text = ['Stir to the bottom, measure again, log the reading.'];
    switch (way) {
      case 'water':
        return [
          ['Stir to the bottom; scrape up any cake.'],
          ['Pour the water in slowly, stirring.'],
          measure,
        ];
      case 'draw-off':
        return [
          ['Let it rest until the water on top is clear.'],
          ['Ladle or siphon the clear water off; label it and keep it for the next batch.'],
          measure,
        ];
      case 'evaporate':
        return [
          [
            'Take the lid off, keep the pail out of the reach of children and animals, and put a note on it. Stir it once a day.',
          ],
          [
            'Only water leaves: what is dissolved in it stays in the glaze. In a dry room a pail loses a few hundred ml a day (common practice).',
          ],
          measure,
        ];
      case 'dry':
        return [
          ['Wet the powder in a little of the glaze first, or sprinkle it on and let it soak.'],
          ['Mix it in, and sieve what was added.'],
          measure,
        ];
      case 'blend':
        return [['Stir both to the bottom.'], ['Pour, stirring.'], measure];
    }
  },
};
