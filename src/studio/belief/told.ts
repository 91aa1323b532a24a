import { chancesOff } from './chances.ts';
import { type Belief, type Component, average, place } from './mixture.ts';
import { deflocculated, doseStep, toldTaken } from './priors.ts';
import { middleGravity, type Windows } from './startBelief.ts';
import { withAdded, withMoved } from './withAdded.ts';

/** How likely a bucket must be off before somebody is taken to have been told to change it. */
const told = 0.9;
/** How exactly an amount is poured by hand, as a part of it. */
const pourWithin = 0.15;

/** What each account would be, had somebody done as they were told, for each way to do it; none when they were told nothing. */
const doneAsTold = (
  { components }: Belief,
  windows: Windows,
  isStirredLong: boolean,
): ((one: Component) => Component)[] => {
  const { gravity, flow } = chancesOff({ components }, windows);
  if (!gravity) return [];
  const { mean } = average(components);
  const middle = middleGravity(windows);
  const [value = middle, volume = 0] = mean;
  const litres = (Math.exp(volume) * (value - middle)) / (middle - 1);
  const water = (one: Component) => withAdded(one, { gravity: 1, litres, sd: Math.abs(litres) * pourWithin });
  if (gravity.high >= told) return [water];
  if (gravity.low >= told) {
    const powder = (Math.exp(volume) * (middle - value)) / (windows.solids - middle);
    return [
      water,
      (one) => withAdded(one, { gravity: windows.solids, litres: powder, sd: powder * pourWithin }),
    ];
  }
  if (flow && flow.thin >= told) return [(one) => withMoved(one, [place.flow, doseStep.flow, doseStep.sd])];
  if (flow && flow.thick >= told && isStirredLong)
    return [(one) => withMoved(one, [place.flow, deflocculated.flow, deflocculated.sd])];
  return [];
};

/**
 * Somebody was told to change a bucket, and now logs something else of it: one time in two the change was made, and not
 * logged.
 */
export const perhapsAsTold = (belief: Belief, windows: Windows, isStirredLong: boolean): Belief => {
  const { visit } = belief;
  if (!visit?.weighed || visit.readings === 0) return belief;
  const ways = doneAsTold(belief, windows, isStirredLong);
  if (ways.length === 0) return belief;
  const part = toldTaken / ways.length;
  return {
    ...belief,
    components: belief.components.flatMap((one) => [
      { ...one, weight: one.weight * (1 - toldTaken) },
      ...ways.map((way) => way({ ...one, weight: one.weight * part })),
    ]),
  };
};
