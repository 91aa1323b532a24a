/** Bisque that absorbs more than this takes up glaze fast, less slowly: per cent, common practice (Rhodes; Hamer). */
const usualAbsorption = { low: 8, high: 18 };
/** Bisque fired to cone 08 or below is soft, to cone 02 or above nearly tight: common practice. */
const usualCones = { low: -8, high: -2 };

export const bisques = ['soft', 'usual', 'tight'] as const;
/** How hard the piece was bisque-fired, and so how much it absorbs. */
export type Bisque = (typeof bisques)[number];

/** By its absorption, or else by the cone that it was fired to. */
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
