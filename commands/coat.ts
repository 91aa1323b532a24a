import type { Group } from '../src/contract/contract.ts';
import { listCoats } from './coat/list.ts';
import { coatOff } from './coat/off.ts';
import { coatOn } from './coat/on.ts';

export const coatGroup: Group = {
  name: 'coat',
  about: (w) => w.coat.about,
  leaves: [coatOn, listCoats, coatOff],
};
