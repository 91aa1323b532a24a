import type { FlowCupKind } from '../../glaze/flow/flowCup.ts';
import type { Celsius, Fraction, Grams } from '../../glaze/units.ts';
import type { Duration, Instant, MemberId, Seq } from '../ids.ts';
import type { DayHours, OpeningHours, WeekdayName } from '../time/openingHours.ts';
import type { QuietHours } from '../time/quietHours.ts';
import type { StoredRecipe } from './recipe.ts';
import type { GlazingSession } from '../time/session.ts';
import type { StudioMaterial } from './studioMaterial.ts';

export type UnitSystem = 'metric' | 'us' | 'imperial';

/** A cup calibrated by the weight of water that it holds. */
export interface Vessel {
  name: string;
  tare: Grams;
  water: Grams;
  temperature: Celsius;
  /** The smallest step of the scale that it was calibrated on. */
  scaleStep: Grams;
}

/** A flow cup of the studio: a standard kind, or its own, of which only a window is known. */
export interface StudioCup {
  name: string;
  kind: FlowCupKind | 'own';
}

/** The usual house rule until a keeper sets another: common practice. */
export const usualMinimumHours = 12;

/** One dip in twenty may be off, until a keeper wants it otherwise: common practice. */
export const usualSure = 0.95;

/** The house rule for resist coats, and the air to assume when nobody gives it. */
export interface DryingRule {
  minimumHours: number;
  /** False where the hours are enough. A night is needed until a keeper says otherwise. */
  night?: boolean;
  temperature?: Celsius;
  humidity?: Fraction;
}

export interface ReminderRule {
  /** How long before a session or plan a warning comes. */
  lead: Duration;
  quiet?: QuietHours;
}

export type ReachBy = 'direct' | 'channel';

/** When the round is told on days when the studio is open, in minutes after midnight, and to whom. */
export interface Morning {
  at: number;
  by: ReachBy;
}

/** What the studio has told the bot about itself, folded from its stream. */
export interface Studio {
  seq: Seq;
  /** The studio's name, once it was set. */
  name?: string;
  zone: string;
  /** The zone was set; until then times are in UTC. */
  zoneSet?: true;
  units: UnitSystem;
  vessels: Vessel[];
  cups: StudioCup[];
  hardWater: boolean;
  /** The deflocculant that stands in the room and its strength, in a keeper's words. */
  deflocculant?: string;
  /** Powder in a level scoop of the room. */
  scoop?: Grams;
  /** How likely a bucket must be right, 0 to 1, before no more readings of it are wanted; absent until it is set. */
  sure?: number;
  recipes: StoredRecipe[];
  /** Materials that no table has, as keepers described them. */
  materials: StudioMaterial[];
  /** Members named as keepers, in addition to those that the platform makes keepers. */
  keepers: MemberId[];
  /** Discord role whose holders are keepers. */
  keeperRole?: string;
  /** Where reminders go when a direct message cannot. */
  channel?: string;
  hours: OpeningHours;
  drying: DryingRule;
  sessions: GlazingSession[];
  reminders: ReminderRule;
  /** Absent until a keeper wants the round to be told. */
  morning?: Morning;
  /** The next bisque or glaze firing, when one is planned. */
  firing?: Instant;
  /** Members who get their reminders in the channel instead of a direct message. */
  inChannel: MemberId[];
  /** Who last changed a setting, and so is a keeper. */
  setBy?: MemberId;
}

export type StudioEvent =
  | { kind: 'name'; name: string }
  | { kind: 'zone'; zone: string }
  | { kind: 'units'; units: UnitSystem }
  | { kind: 'vessel'; vessel: Vessel }
  | { kind: 'cup'; cup: StudioCup }
  | { kind: 'water'; hard: boolean }
  | { kind: 'sure'; chance: number }
  | { kind: 'deflocculant'; what: string }
  | { kind: 'scoop'; holds: Grams }
  | { kind: 'recipe'; recipe: StoredRecipe }
  | { kind: 'material'; material: StudioMaterial }
  | { kind: 'keeper'; member: MemberId; keeper: boolean }
  | { kind: 'keeper-role'; role: string }
  | { kind: 'channel'; channel: string }
  | { kind: 'hours'; week: Partial<Record<WeekdayName, DayHours | 'closed'>> }
  | { kind: 'closures'; days: string[]; closed: boolean }
  | { kind: 'drying'; minimumHours?: number; night?: boolean; temperature?: Celsius; humidity?: Fraction }
  | { kind: 'session'; session: GlazingSession }
  | { kind: 'session-off'; name: string }
  | { kind: 'reminders'; lead?: Duration; quiet?: QuietHours | 'none' }
  /** Without a morning, it is no longer told. */
  | { kind: 'morning'; morning?: Morning }
  /** Without a time, the firing is cancelled. */
  | { kind: 'firing'; at?: Instant }
  | { kind: 'reach'; member: MemberId; by: ReachBy }
  | { kind: 'undo'; of: Seq };
