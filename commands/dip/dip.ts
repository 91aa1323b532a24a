import type { Group } from '../../src/contract/contract.ts';
import { bisqueAbsorption } from './absorption.ts';
import { dipTile } from './tile.ts';
import { timeToDip } from './time.ts';

export const dipGroup: Group = {
  name: 'dip',
  about: (w) => w.dip.about,
  leaves: [timeToDip, dipTile, bisqueAbsorption],
};
