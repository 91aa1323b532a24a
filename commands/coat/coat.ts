import type { Group } from '../../src/contract/contract.ts';
import { listCoats } from './list.ts';
import { coatOff } from './off.ts';
import { coatOn } from './on.ts';

export const coatGroup: Group = {
  name: 'coat',
  about: (w) => w.coat.about,
  leaves: [coatOn, listCoats, coatOff],
};
