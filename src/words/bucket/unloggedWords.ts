import type { Evaporation } from '../../studio/contents/evaporation.ts';
import { minutes, since } from '../../studio/ids.ts';
import type { UnitSystem } from '../../studio/settings/studio.ts';
import type { Explanation, UnloggedChange } from '../../studio/contents/unloggedChange.ts';
import { capital } from '../text/capital.ts';
import { listed } from '../text/listed.ts';
import { eachPail, massText, powderWithin, volumeText, waterWithin } from '../text/measures.ts';
import { said, t, type Text } from '../text/text.ts';
import { dayAndTime } from '../text/dayAndTime.ts';

const between = ({ from, to }: UnloggedChange): Text =>
  since(from.at, to.at) < minutes(1)
    ? t`just before ${dayAndTime(to.at)}`
    : t`between ${dayAndTime(from.at)} and ${dayAndTime(to.at)}`;

/** An amount in the pail, or in each of its litres or gallons. */
const amount = (
  { value, u95 }: { value: number; u95: number },
  { each }: UnloggedChange,
  units: UnitSystem,
  text: typeof waterWithin,
): { much: string; of: string } => {
  const { name, litres } = eachPail(units);
  const per = each === 'pail' ? 1 : litres;
  return {
    much: text(Math.abs(value) * per, u95 * per, units),
    of: each === 'pail' ? '' : ` to each ${name}`,
  };
};

const none = { value: 0, u95: 0 };
const way = (value: number): string => (value < 0 ? 'out' : 'in');

const sentence = (change: UnloggedChange, units: UnitSystem): Text => {
  const water = amount(change.water ?? none, change, units, waterWithin);
  const powder = amount(change.powder ?? none, change, units, powderWithin);
  const when = between(change);
  switch (change.what) {
    case 'water-in':
    case 'water-out':
      return t`About ${[water.much]} of water${[water.of]} went ${[change.what === 'water-in' ? 'in' : 'out']} ${when}, and nobody wrote it down.`;
    case 'evaporation':
      return t`About ${[water.much]} of water${[water.of]} evaporated ${when}, as it does from an open pail.`;
    case 'dry-in':
      return t`About ${[powder.much]} of dry batch${[powder.of]} went in ${when}, and nobody wrote it down.`;
    case 'cake':
      return t`About ${[powder.much]} of powder${[powder.of]} settled as cake at the bottom ${when}: the pail is as full as before, and the glaze weighs less.`;
    case 'cake-before':
      return t`About ${[powder.much]} of powder${[powder.of]} came up from the cake at the bottom ${when}: the pail is as full as before, and the glaze weighs more.`;
    case 'air':
      return t`Air was beaten in ${when}: the glaze reads lighter and stands higher in the pail.`;
    case 'unknown':
      return t`About ${[water.much]} of water${[water.of]} went ${[way(change.water?.value ?? 0)]} and about ${[powder.much]} of powder${[powder.of]} went ${[way(change.powder?.value ?? 0)]} ${when}, and nobody wrote it down.`;
  }
};

const names: Record<Explanation, string> = {
  'water-in': 'water',
  cake: 'cake left at the bottom',
  air: 'air beaten in',
  'water-out': 'clear water drawn off',
  evaporation: 'evaporation',
  'dry-in': 'dry batch stirred in',
  'cake-before': 'cake left at the bottom in the reading before',
};

/** What the logbook does not account for. It never says who. */
export const unloggedWords = {
  fact: 'Not logged',
  factEvaporation: 'Dries out',
  sentence,
  alike: ({ orElse }: UnloggedChange): Text => {
    const alike = orElse.map((one) => names[one]);
    return [`${capital(listed(alike, 'or'))} would give the same readings, so they can't tell which it was.`];
  },
  rate: (
    { value, u95, readings, since }: Evaporation,
    each: UnloggedChange['each'],
    units: UnitSystem,
  ): Text => {
    const { name, litres } = eachPail(units);
    const per = each === 'pail' ? 1 : litres;
    return t`about ${[waterWithin(value * per, u95 * per, units)]} of water a day${[each === 'pail' ? '' : ` from each ${name}`]}, from ${readings} readings since ${dayAndTime(since)}. A lid stops that.`;
  },
  addsUp: t`That explains the difference that the logbook could not.`,
  inLog: (change: UnloggedChange, units: UnitSystem): Text => t`not logged · ${sentence(change, units)}`,
  notice: (name: string, change: UnloggedChange, units: UnitSystem): Text =>
    t`${said(name)}: ${sentence(change, units)}`,
  logWater: (ml: number | undefined, out: boolean, units: UnitSystem): Text =>
    ml === undefined
      ? [`Log it: water ${out ? 'out' : 'in'}`]
      : t`Log it: ${[volumeText(ml, units)]} of water ${[out ? 'out' : 'in']}`,
  logDry: (g: number | undefined, units: UnitSystem): Text =>
    g === undefined ? t`Log it: dry batch` : t`Log it: ${[massText(g, units)]} of dry batch`,
  inList: ', not all of it logged',
};
