import { expect, it } from 'vitest';
import { densityFromImperialPint, gravityFromImperialPint } from '../../../../src/glaze/slurry/hydrometer.ts';
import { ouncesPerImperialPint } from '../../../../src/glaze/units.ts';
import { must } from '../../../helpers/glaze/must.ts';

it('the twenty-ounce rule is 0.2 % above the exact pint (GNU units 2.22: 49.888186 g/l per oz)', () => {
  const pint = ouncesPerImperialPint(28);
  expect(must(densityFromImperialPint(pint))).toBeCloseTo(28 * 49.888186, 4);
  expect((1000 * must(gravityFromImperialPint(pint))) / must(densityFromImperialPint(pint))).toBeCloseTo(
    1.0022,
    4,
  );
});
