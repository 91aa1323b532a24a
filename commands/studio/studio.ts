import type { Group } from '../../src/contract/contract.ts';
import { setDrying } from './drying.ts';
import { setFiring } from './firing.ts';
import { setHours } from './hours.ts';
import { setMaterial } from './material.ts';
import { setMaterials } from './materials.ts';
import { setMorning } from './morning.ts';
import { setReminders } from './reminders.ts';
import { setSession } from './session.ts';
import { setStudio } from './set.ts';
import { setCup, setKeeper, setVessel } from './things.ts';
import { showStudio } from './show.ts';

export const studioGroup: Group = {
  name: 'studio',
  about: (w) => w.studio.about,
  leaves: [
    showStudio,
    setStudio,
    setHours,
    setSession,
    setDrying,
    setReminders,
    setMorning,
    setFiring,
    setMaterial,
    setMaterials,
    setVessel,
    setCup,
    setKeeper,
  ],
};
