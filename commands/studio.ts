import type { Group } from '../src/command/contract.ts';
import { setStudio } from './studio/set.ts';
import { setCup, setKeeper, setVessel } from './studio/things.ts';
import { showStudio } from './studio/show.ts';

export const studioGroup: Group = {
  name: 'studio',
  about: (w) => w.studio.about,
  leaves: [showStudio, setStudio, setVessel, setCup, setKeeper],
};
