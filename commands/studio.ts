import type { Group } from '../src/contract/contract.ts';
import { setDrying } from './studio/drying.ts';
import { setFiring } from './studio/firing.ts';
import { setHours } from './studio/hours.ts';
import { setMaterial } from './studio/material.ts';
import { setMaterials } from './studio/materials.ts';
import { setMorning } from './studio/morning.ts';
import { setReminders } from './studio/reminders.ts';
import { setSession } from './studio/session.ts';
import { setStudio } from './studio/set.ts';
import { setCup, setKeeper, setVessel } from './studio/things.ts';
import { showStudio } from './studio/show.ts';

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
