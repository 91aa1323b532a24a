import { grams, millilitres, type Grams, type Millilitres } from '../glaze/units.ts';

/**
 * Epsom salt in a millilitre of its saturated solution at 20 °C: 25.3 % MgSO4 by mass at 1.286 g/ml, counted as
 * heptahydrate, of which MgSO4 is 48.835 %.
 */
const heptahydratePerMl = (0.253 * 1.286) / 0.48835;

export const saltInSaturatedSolution = (solution: Millilitres): Grams => grams(solution * heptahydratePerMl);

export const saturatedSolutionWith = (heptahydrate: Grams): Millilitres =>
  millilitres(heptahydrate / heptahydratePerMl);
