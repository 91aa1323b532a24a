import {
  baumeFromGravity,
  gravityFromBaume,
  gravityFromTwaddell,
  twaddellFromGravity,
} from '../../../glaze/slurry/hydrometer.ts';
import { gravitiesIn } from '../../../parse/amountsIn.ts';
import type { Sum } from './sumAsked.ts';

const degreesBaume = /(?<![\d.,])(\d{1,3}(?:[.,]\d+)?)\s*(?:°|degrees?|deg)?\s*(?:baume|be|b)(?![a-z])/;
const degreesTwaddell = /(?<![\d.,])(\d{1,3}(?:[.,]\d+)?)\s*(?:°|degrees?|deg)?\s*(?:twaddell|tw)(?![a-z])/;
/** “Baume 45”. */
const afterName = /\b(?:baume|twaddell)\s*(?:of |is |reads |scale |at )*(\d{1,3}(?:[.,]\d+)?)(?!\d|[.,]\d)/;

const highest = { Baumé: 72, Twaddell: 200 } as const;

/** A hydrometer's degrees as gravity, or a gravity as degrees. */
export const hydrometerSum: Sum = ({ heard }, { words }) => {
  const w = words.sum;
  const isTwaddell = /\btwaddell\b|°\s*tw\b|\d\s*tw\b/.test(heard);
  const scale = isTwaddell ? 'Twaddell' : 'Baumé';
  // “45 be” may be “should be”: without the scale's name it needs a degree sign, or gravity in the question.
  const namesScale =
    isTwaddell ||
    /\bbaume\b|°\s*be?\b|^\W*\d+(?:[.,]\d+)?\s*be\W*$/.test(heard) ||
    (/\d\s*be\b/.test(heard) && /\bgravity\b|\bsg\b/.test(heard));
  if (!namesScale) return Promise.resolve(undefined);
  const [stated] = gravitiesIn(heard);
  const typed = (isTwaddell ? degreesTwaddell : degreesBaume).exec(heard)?.[1] ?? afterName.exec(heard)?.[1];
  const degrees = typed === undefined ? undefined : Number(typed.replace(',', '.'));
  if (degrees !== undefined && !(stated && degrees === Number(stated.value))) {
    const found = isTwaddell ? gravityFromTwaddell(degrees) : gravityFromBaume(degrees);
    if (!found.ok)
      return Promise.resolve({
        kind: 'answer',
        title: w.noSuchDegree(scale, degrees, highest[scale]),
        data: { sum: 'hydrometer', gravity: null },
      });
    const other = isTwaddell ? undefined : gravityFromBaume(degrees, 144.3);
    return Promise.resolve({
      kind: 'answer',
      title: w.toGravity(scale, degrees, found.value),
      facts: other?.ok ? [{ label: w.otherScale, text: w.otherScaleGravity(other.value) }] : [],
      reasons: [w.scaleBasis[scale]],
      data: { sum: 'hydrometer', scale, degrees, gravity: found.value },
    });
  }
  if (!stated) return Promise.resolve(undefined);
  const back = isTwaddell ? twaddellFromGravity(stated.value) : baumeFromGravity(stated.value);
  if (!back.ok) return Promise.resolve(undefined);
  const other = isTwaddell ? undefined : baumeFromGravity(stated.value, 144.3);
  return Promise.resolve({
    kind: 'answer',
    title: w.fromGravity(scale, back.value, stated.value),
    facts: other?.ok ? [{ label: w.otherScale, text: w.otherScaleDegrees(other.value) }] : [],
    reasons: [w.scaleBasis[scale]],
    data: { sum: 'hydrometer', scale, degrees: back.value, gravity: stated.value },
  });
};
