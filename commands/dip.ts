import type { Group } from '../src/contract/contract.ts';
import { bisqueAbsorption } from './dip/absorption.ts';
import { dipTile } from './dip/tile.ts';
import { timeToDip } from './dip/time.ts';

export const dipGroup: Group = {
  name: 'dip',
  about: (w) => w.dip.about,
  leaves: [timeToDip, dipTile, bisqueAbsorption],
};
