import { gravity } from '../../glaze/units.ts';

/** The gravity of dry powder until a keeper sets another (common practice: clay, feldspar and silica lie near it). */
export const usualSolids = gravity(2.6);
