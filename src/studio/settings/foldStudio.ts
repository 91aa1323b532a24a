import { definedOnly } from '../../definedOnly.ts';
import { undoneIn, type Entry } from '../entry.ts';
import { minutes, seq, type MemberId } from '../ids.ts';
import { usualHours } from '../time/openingHours.ts';
import { usualMinimumHours, type Studio, type StudioEvent } from './studio.ts';
import { usualQuiet } from '../time/quietHours.ts';

export const newStudio: Studio = {
  seq: seq(0),
  zone: 'UTC',
  units: 'metric',
  vessels: [],
  cups: [],
  hardWater: false,
  recipes: [],
  materials: [],
  keepers: [],
  hours: usualHours,
  drying: { minimumHours: usualMinimumHours },
  sessions: [],
  // Time enough to put the wax back on the shelf: common practice.
  reminders: { lead: minutes(30), quiet: usualQuiet },
  inChannel: [],
};

const replaced = <T extends { name: string }>(all: readonly T[], one: T): T[] => [
  ...all.filter(({ name }) => name.toLowerCase() !== one.name.toLowerCase()),
  one,
];

const withClosures = ({ hours }: Studio, days: readonly string[], closed: boolean): Studio['hours'] => {
  const others = hours.closures.filter((day) => !days.includes(day));
  return { ...hours, closures: closed ? [...others, ...days].sort() : others };
};

/** A list of members with one of them in it, or not. */
const withMember = (all: readonly MemberId[], member: MemberId, isIn: boolean): MemberId[] => {
  const others = all.filter((id) => id !== member);
  return isIn ? [...others, member] : others;
};

const withReminders = (
  { reminders }: Studio,
  { lead, quiet }: Extract<StudioEvent, { kind: 'reminders' }>,
) => {
  const { quiet: before, ...rest } = { ...reminders, ...definedOnly({ lead }) };
  const now = quiet ?? before;
  return now === undefined || now === 'none' ? rest : { ...rest, quiet: now };
};

const applyStudioEvent = (studio: Studio, event: StudioEvent): Studio => {
  switch (event.kind) {
    case 'name':
      return { ...studio, name: event.name };
    case 'zone':
      return { ...studio, zone: event.zone, zoneSet: true };
    case 'units':
      return { ...studio, units: event.units };
    case 'vessel':
      return { ...studio, vessels: replaced(studio.vessels, event.vessel) };
    case 'cup':
      return { ...studio, cups: replaced(studio.cups, event.cup) };
    case 'water':
      return { ...studio, hardWater: event.hard };
    case 'deflocculant':
      return { ...studio, deflocculant: event.what };
    case 'scoop':
      return { ...studio, scoop: event.holds };
    case 'sure':
      return { ...studio, sure: event.chance };
    case 'recipe':
      return { ...studio, recipes: replaced(studio.recipes, event.recipe) };
    case 'material':
      return { ...studio, materials: replaced(studio.materials, event.material) };
    case 'keeper':
      return { ...studio, keepers: withMember(studio.keepers, event.member, event.keeper) };
    case 'keeper-role':
      return { ...studio, keeperRole: event.role };
    case 'channel':
      return { ...studio, channel: event.channel };
    case 'hours':
      return { ...studio, hours: { ...studio.hours, week: { ...studio.hours.week, ...event.week } } };
    case 'closures':
      return { ...studio, hours: withClosures(studio, event.days, event.closed) };
    case 'drying': {
      const { kind: _, ...rule } = event;
      return { ...studio, drying: { ...studio.drying, ...rule } };
    }
    case 'session':
      return { ...studio, sessions: replaced(studio.sessions, event.session) };
    case 'session-off':
      return {
        ...studio,
        sessions: studio.sessions.filter(({ name }) => name.toLowerCase() !== event.name.toLowerCase()),
      };
    case 'reminders':
      return { ...studio, reminders: withReminders(studio, event) };
    case 'morning':
      return definedOnly({ ...studio, morning: event.morning });
    case 'firing':
      return definedOnly({ ...studio, firing: event.at });
    case 'reach':
      return { ...studio, inChannel: withMember(studio.inChannel, event.member, event.by === 'channel') };
    case 'undo':
      return studio;
  }
};

/** Folds the studio's entries, in the order in which they were logged, without those that were undone. */
export const foldStudio = (entries: readonly Entry<StudioEvent>[]): Studio => {
  const undone = undoneIn(entries);
  return [...entries]
    .sort((a, b) => a.seq - b.seq)
    .reduce(
      (studio, { seq: at, event, by }) => ({
        ...(undone.has(at) ? studio : applyStudioEvent(studio, event)),
        // Any member may change how they are reached, and undo entries; neither makes them a keeper.
        ...(event.kind !== 'reach' && event.kind !== 'undo' && { setBy: by }),
        seq: at,
      }),
      newStudio,
    );
};
