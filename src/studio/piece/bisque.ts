/** Bisque that absorbs more drinks fast, less draws slowly: per cent, common practice (Rhodes; Hamer). */
const usualAbsorption = { low: 8, high: 18 };
/** Bisque fired this low is soft, this high is nearly tight: cone 08 and cone 02, common practice. */
const usualCones = { low: -8, high: -2 };

export const bisques = ['soft', 'usual', 'tight'] as const;
/** How hard it was fired before the glaze, and so how much it drinks. */
export type Bisque = (typeof bisques)[number];

/** By what it absorbs, or else by the cone that it was fired to. */
export const bisqueOf = ({
  absorption,
  cone,
}: {
  absorption?: number | undefined;
  cone?: number | undefined;
}): Bisque => {
  if (absorption !== undefined)
    return absorption > usualAbsorption.high ? 'soft' : absorption < usualAbsorption.low ? 'tight' : 'usual';
  if (cone === undefined) return 'usual';
  return cone <= usualCones.low ? 'soft' : cone >= usualCones.high ? 'tight' : 'usual';
};
