import { present } from '../../present.ts';
import type { BucketEntry, Added, BucketEvent } from '../../studio/bucket/bucketEvent.ts';
import type { Entry } from '../../studio/entry.ts';
import type { CoatEvent } from '../../studio/resist/coatEvent.ts';
import type { FiredEvent } from '../../studio/firing/firedEvent.ts';
import type { PieceEvent } from '../../studio/piece/pieceEvent.ts';
import type { LoggedEvent, Notes } from '../../studio/logbook/ports.ts';
import type { StudioEvent, UnitSystem } from '../../studio/settings/studio.ts';
import { coatWords } from '../resist/coatWords.ts';
import { firedWords } from '../firing/firedWords.ts';
import { dayHoursText, weekdayText } from '../studio/hoursWords.ts';
import {
  gravityWithin,
  massText,
  secondsText,
  spanText,
  temperatureText,
  volumeText,
  chanceText,
} from '../text/measures.ts';
import { peopleWords } from '../studio/peopleWords.ts';
import { prepWords } from '../piece/prepWords.ts';
import { join, said, t, type Part, type Text } from '../text/text.ts';
import { dayAndTime } from '../text/dayAndTime.ts';
import { vesselText } from '../text/vesselText.ts';

/** A level is read to a tenth of a litre at best, ml. */
const byEye = (ml: number): number => Math.round(ml / 100) * 100;

const named = (added: Added): Text => {
  switch (added.what) {
    case 'draw-off':
      return t`clear water`;
    case 'dry':
      return t`dry batch`;
    case 'flocculant':
      return added.volume === undefined ? t`flocculant` : t`flocculant solution`;
    case 'glaze':
      return added.from === undefined ? t`glaze` : t`glaze from bucket ${added.from}`;
    case 'taken':
      return added.to === undefined ? t`glaze` : t`glaze for bucket ${added.to}`;
    case 'other':
      return added.name === undefined ? t`something else` : [said(added.name)];
    default:
      return [added.what];
  }
};

/** What went in or came out, its amount first; that nobody said how much shows. */
const moved = (added: Added, units: UnitSystem): Text => {
  const volume = 'volume' in added ? added.volume : undefined;
  if (volume !== undefined) return t`${[volumeText(volume, units)]} of ${named(added)}`;
  const mass = added.what === 'flocculant' ? added.heptahydrate : 'mass' in added ? added.mass : undefined;
  return mass === undefined
    ? t`${named(added)}, amount not given`
    : t`${[massText(mass, units)]} of ${named(added)}`;
};

const verb = ({ what }: Added): string =>
  what === 'draw-off' ? 'drew off ' : what === 'taken' ? 'took out ' : 'added ';

export const addedText = (added: Added, units: UnitSystem): Text => [verb(added), ...moved(added, units)];

const reading = (event: Extract<BucketEvent, { kind: 'reading' }>, units: UnitSystem): Text => {
  const { gravity, flow, look, gap, level, temperature, seen, stirred } = event;
  const parts = present([
    gravity && t`gravity ${[gravityWithin(gravity.value, gravity.u95)]}`,
    flow && t`${said(flow.cup)} ${[secondsText(flow.seconds)]}`,
    look && t`looks ${[look]}`,
    gap !== undefined && t`gap ${[`${Math.round(gap) / 10} cm`]}`,
    level !== undefined && t`about ${[volumeText(byEye(level), units)]} in the pail`,
    temperature !== undefined && [temperatureText(temperature, units)],
    seen.length > 0 && t`seen: ${[seen.join(', ')]}`,
    stirred !== undefined && (stirred ? t`stirred` : t`not stirred`),
  ]);
  return parts.length === 0 ? t`a note` : join(parts, ', ');
};

const studioText = (event: StudioEvent, units: UnitSystem): Text => {
  switch (event.kind) {
    case 'name':
      return t`named the studio ${said(event.name)}`;
    case 'zone':
      return t`set the time zone to ${[event.zone]}`;
    case 'units':
      return t`set the units to ${[event.units]}`;
    case 'vessel':
      return t`set weighing cup ${said(event.vessel.name)}: ${[vesselText(event.vessel, units)]}`;
    case 'cup':
      return t`set flow cup ${said(event.cup.name)} (${[event.cup.kind]})`;
    case 'water':
      return [event.hard ? 'noted hard water' : 'noted soft water'];
    case 'deflocculant':
      return t`set the deflocculant: ${said(event.what)}`;
    case 'scoop':
      return [`noted the powder scoop: ${massText(event.holds, units)}`];
    case 'sure':
      return [`set how sure to be of a bucket: ${chanceText(event.chance)}`];
    case 'recipe':
      return t`saved the recipe ${said(event.recipe.name)}`;
    case 'material':
      return t`described the material ${said(event.material.name)}`;
    case 'keeper':
      return [event.keeper ? 'made somebody a keeper' : 'made a keeper a member again'];
    case 'keeper-role':
      return t`set the keepers’ role`;
    case 'channel':
      return t`set the reminder channel`;
    case 'hours':
      return t`set the opening hours: ${[
        Object.entries(event.week)
          .map(([day, hours]) => `${day} ${dayHoursText(hours)}`)
          .join(', '),
      ]}`;
    case 'closures':
      return t`noted ${[event.closed ? 'closed' : 'open']}: ${[event.days.join(', ')]}`;
    case 'drying':
      return t`set how long resist coats dry`;
    case 'session':
      return t`set the session ${said(event.session.name)}: ${[weekdayText(event.session.day)]} ${[dayHoursText(event.session.hours)]}`;
    case 'session-off':
      return t`took the session ${said(event.name)} out`;
    case 'reminders':
      return t`set when reminders come`;
    case 'morning':
      return [event.morning ? 'set when the round is told' : 'turned the morning’s round off'];
    case 'firing':
      return event.at === undefined ? t`cancelled the firing` : t`planned a firing ${dayAndTime(event.at)}`;
    case 'reach':
      return t`wants reminders ${[event.by === 'direct' ? 'directly' : 'in the channel']}`;
    case 'undo':
      return t`took back s-${event.of}`;
  }
};

const bucketText = ({ event, stream }: BucketEntry, units: UnitSystem): Text => {
  switch (event.kind) {
    case 'setup':
      return t`set the bucket up as ${said(event.settings.name)}`;
    case 'change':
      return t`changed ${[[...Object.keys(event.settings), ...(event.cleared ?? []), ...(event.volume === undefined ? [] : ['volume'])].join(', ')]}`;
    case 'reading':
      return t`read ${reading(event, units)}`;
    case 'addition':
      return addedText(event.added, units);
    case 'stir': {
      const how =
        event.tool === undefined ? '' : ` with ${event.tool === 'hand' ? 'the hand' : `a ${event.tool}`}`;
      const long = event.minutes === undefined ? '' : ` ${spanText(event.minutes / 60)}`;
      const seen = event.seen.length === 0 ? '' : `; seen: ${event.seen.join(', ')}`;
      const look = event.look === undefined ? '' : `; looks ${event.look}`;
      return [`stirred${long}${how}${look}${seen}`];
    }
    case 'sieve':
      return event.mesh === undefined ? t`sieved it` : t`sieved it through ${event.mesh} mesh`;
    case 'tile':
      return t`dipped a test tile ${[secondsText(event.seconds)]}: ${[`${event.thickness} mm`]}`;
    case 'hold':
      return t`put it on hold${[event.cause === 'other' ? '' : ` (${event.cause})`]}: ${said(event.why)}`;
    case 'release':
      return t`released it`;
    case 'retire':
      return t`retired it`;
    case 'learned':
      return t`noted what the other buckets have shown`;
    case 'undo':
      return t`took back ${[`${stream}-${event.of}`]}`;
  }
};

const plainly = (entry: BucketEntry, units: UnitSystem): Text => {
  const { event } = entry;
  if (event.kind === 'reading') return reading(event, units);
  const comesOut = event.kind === 'addition' && verb(event.added) !== 'added ';
  return event.kind === 'addition' && !comesOut ? moved(event.added, units) : bucketText(entry, units);
};

const isBucketEvent = (entry: Entry<LoggedEvent>): entry is Entry<BucketEvent> => entry.stream > 0;
const isCoatEvent = (entry: Entry<LoggedEvent>): entry is Entry<CoatEvent> => entry.stream === -1;
const isPieceEvent = (entry: Entry<LoggedEvent>): entry is Entry<PieceEvent> => entry.stream === -2;
const isFiredEvent = (entry: Entry<LoggedEvent>): entry is Entry<FiredEvent> => entry.stream === -3;
const isStudioEvent = (entry: Entry<LoggedEvent>): entry is Entry<StudioEvent> => entry.stream === 0;

const what = (entry: Entry<LoggedEvent>, units: UnitSystem): Text => {
  if (isBucketEvent(entry)) return bucketText(entry, units);
  if (isCoatEvent(entry)) return coatWords.event(entry.event);
  if (isPieceEvent(entry)) return prepWords.event(entry.event);
  if (isFiredEvent(entry)) return firedWords.event(entry.event);
  return isStudioEvent(entry) ? studioText(entry.event, units) : [];
};

const longerAgo = 120_000;

/** When it happened, said when that is not when it was written down: a time misread shows. */
const backdated = ({ at, loggedAt }: Entry<LoggedEvent>): Text =>
  loggedAt - at > longerAgo ? t`, for ${dayAndTime(at)}` : [];

export const logWords = {
  /** An entry to pick from a list, told from others of the same bucket. */
  short: (id: string, name: string, entry: Entry<LoggedEvent>, units: UnitSystem): Text =>
    t`${[id]} · ${isBucketEvent(entry) ? plainly(entry, units) : what(entry, units)}, ${{ at: entry.at, show: 'ago' }} · ${said(name)}`,
  /** What an entry was taken for, without its verb where “logged” says as much. */
  what: (entry: BucketEntry, units: UnitSystem): Text => t`${plainly(entry, units)}${backdated(entry)}`,
  setting: ({ event }: Entry<StudioEvent>, units: UnitSystem): Text => studioText(event, units),
  logged: ({ entry, text }: { entry: string; text: Text }): Text => t`Logged ${[entry]}: ${text}.`,
  entry: (entry: Entry<LoggedEvent> & Notes, by: Part, units: UnitSystem): Text => [
    ...t`${[entry.id]} · ${dayAndTime(entry.at)} · ${by} ${what(entry, units)}`,
    ...(entry.note === undefined ? [] : t` · “${said(entry.note)}”`),
    ...(entry.noteRemoved ? [` · ${peopleWords.redact.removed}`] : []),
    ...(entry.undoneBy === undefined ? [] : t` · taken back`),
    ...(entry.loggedAt - entry.at > longerAgo ? t` · logged ${{ at: entry.loggedAt, show: 'day' }}` : []),
  ],
};
