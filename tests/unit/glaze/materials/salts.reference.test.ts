import {
  anhydrousInHeptahydrate,
  epsomInSolution,
  epsomSolubility,
  epsomToSaturate,
  saturatedEpsom,
} from '../../../../src/glaze/materials/epsomSolution.ts';
import { householdVolumes } from '../../../../src/glaze/materials/householdVolumes.ts';
import { molarMass } from '../../../../src/glaze/materials/molarMass.ts';
import { solutionDensity, type Solute } from '../../../../src/glaze/materials/solutionDensity.ts';
import { celsius, fraction, grams, millilitres } from '../../../../src/glaze/units.ts';
import { vinegarMolarity } from '../../../../src/glaze/materials/vinegar.ts';
import { checkRows } from '../../../helpers/glaze/checkRows.ts';
import { must } from '../../../helpers/glaze/must.ts';
import { input, word, type ReferenceRow } from '../../../helpers/glaze/referenceRows.ts';

const at = (row: ReferenceRow) => celsius(input(row, 'temperature'));
const solution = (row: ReferenceRow, solute: Solute) =>
  must(
    solutionDensity({ solute, massFraction: fraction(input(row, 'mass_fraction')), temperature: at(row) }),
  );
const household = new Map<string, number>(Object.entries(householdVolumes));

checkRows({
  salts: [
    [/^epsom-anh/, (row) => must(epsomSolubility(at(row)))],
    [/^epsom-hepta/, (row) => must(epsomToSaturate({ water: grams(100), temperature: at(row) }))],
    [
      /^epsom-tsp/,
      (row) => must(epsomInSolution({ volume: millilitres(input(row, 'teaspoon')), temperature: at(row) })),
    ],
    [/^epsom-tingmccabe-25/, () => 100 * must(saturatedEpsom(celsius(25)))],
    [/^mgso4-density/, (row) => solution(row, 'MgSO4')],
    [/^density-HAc/, (row) => solution(row, 'CH3COOH')],
    [/^molar/, (row) => molarMass(word(row, 'formula')) ?? Number.NaN],
    [/^hepta-to-anh/, () => anhydrousInHeptahydrate],
    [/^vinegar/, (row) => must(vinegarMolarity(input(row, 'acidity')))],
    [/^vol/, (row) => household.get(word(row, 'unit')) ?? Number.NaN],
  ],
});
