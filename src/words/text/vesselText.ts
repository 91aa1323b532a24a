import type { UnitSystem, Vessel } from '../../studio/settings/studio.ts';
import { scaleText } from './measures.ts';

/** A weighing cup by what it weighs. */
export const vesselText = ({ tare, water }: Pick<Vessel, 'tare' | 'water'>, units: UnitSystem): string =>
  `${scaleText(tare, units)} empty, ${scaleText(water, units)} of water`;
