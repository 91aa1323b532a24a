import type { FlowCupKind } from '../glaze/flowCup.ts';
import type { Celsius, Grams } from '../glaze/units.ts';
import type { MemberId, Seq } from './ids.ts';
import type { StoredRecipe } from './recipe.ts';

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

/** A flow cup of the studio: a standard kind, or its own with a window only. */
export interface StudioCup {
  name: string;
  kind: FlowCupKind | 'own';
}

/** What the studio has told the bot about itself, folded from its stream. */
export interface Studio {
  seq: Seq;
  zone: string;
  units: UnitSystem;
  vessels: Vessel[];
  cups: StudioCup[];
  hardWater: boolean;
  recipes: StoredRecipe[];
  /** Members named as keepers here, besides whoever the platform says is one. */
  keepers: MemberId[];
  /** Discord role whose holders are keepers. */
  keeperRole?: string;
  /** Where reminders go when a direct message cannot. */
  channel?: string;
}

export type StudioEvent =
  | { kind: 'zone'; zone: string }
  | { kind: 'units'; units: UnitSystem }
  | { kind: 'vessel'; vessel: Vessel }
  | { kind: 'cup'; cup: StudioCup }
  | { kind: 'water'; hard: boolean }
  | { kind: 'recipe'; recipe: StoredRecipe }
  | { kind: 'keeper'; member: MemberId; keeper: boolean }
  | { kind: 'keeper-role'; role: string }
  | { kind: 'channel'; channel: string }
  | { kind: 'undo'; of: Seq };
