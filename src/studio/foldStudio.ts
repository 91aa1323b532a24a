import type { Entry } from './bucketEvent.ts';
import { seq } from './ids.ts';
import type { Studio, StudioEvent } from './studio.ts';

export const newStudio: Studio = {
  seq: seq(0),
  zone: 'UTC',
  units: 'metric',
  vessels: [],
  cups: [],
  hardWater: false,
  recipes: [],
  keepers: [],
};

const replaced = <T extends { name: string }>(all: readonly T[], one: T): T[] => [
  ...all.filter(({ name }) => name.toLowerCase() !== one.name.toLowerCase()),
  one,
];

const told = (studio: Studio, event: StudioEvent): Studio => {
  switch (event.kind) {
    case 'zone':
      return { ...studio, zone: event.zone };
    case 'units':
      return { ...studio, units: event.units };
    case 'vessel':
      return { ...studio, vessels: replaced(studio.vessels, event.vessel) };
    case 'cup':
      return { ...studio, cups: replaced(studio.cups, event.cup) };
    case 'water':
      return { ...studio, hardWater: event.hard };
    case 'recipe':
      return { ...studio, recipes: replaced(studio.recipes, event.recipe) };
    case 'keeper': {
      const others = studio.keepers.filter((id) => id !== event.member);
      return { ...studio, keepers: event.keeper ? [...others, event.member] : others };
    }
    case 'keeper-role':
      return { ...studio, keeperRole: event.role };
    case 'channel':
      return { ...studio, channel: event.channel };
    case 'undo':
      return studio;
  }
};

/** The studio that its entries add up to: in the order they were written, undone ones left out. */
export const foldStudio = (entries: readonly Entry<StudioEvent>[]): Studio => {
  const undone = new Set(entries.flatMap(({ event }) => (event.kind === 'undo' ? [event.of] : [])));
  return [...entries]
    .sort((a, b) => a.seq - b.seq)
    .reduce(
      (studio, { seq: at, event }) => ({ ...(undone.has(at) ? studio : told(studio, event)), seq: at }),
      newStudio,
    );
};
