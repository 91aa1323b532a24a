import type { Studio, StudioCup, UnitSystem, Vessel } from '../../studio/settings/studio.ts';
import { chanceText, scaleText } from '../text/measures.ts';
import { join, said, t, type Text } from '../text/text.ts';
import { vesselText } from '../text/vesselText.ts';

export const studioWords = {
  about: 'The studio: zone, units, calibrated cups, flow cups, keepers',
  show: 'What is set for this studio',
  ownName: 'What the studio is called',
  set: 'Its name, time zone, units, water, how sure to be, reminder channel, keepers’ role',
  vessel: 'Calibrate a weighing cup by the water that fills it',
  cup: 'Name a flow cup of the studio',
  keeper: 'Name a keeper, or make one a member again',
  zone: 'Time zone, such as America/St_Johns',
  units: 'metric, us or imperial',
  water: "The studio's tap water: hard water flocculates",
  sure: 'How sure to be that a bucket is right before no more readings are wanted (95 %)',
  role: 'The Discord role whose holders are keepers',
  channel: 'The Discord channel for reminders',
  name: 'What it is called',
  tare: 'Weight of the cup, empty and dry',
  waterHeld: 'Weight of the water alone that fills it to the brim',
  temperature: 'Temperature of that water (20 °C)',
  cupKind: 'A standard kind, or own for one that is only compared with itself',
  member: 'Whom',
  is: 'keeper, or member again',
  factVessels: 'Weighing cups',
  factCups: 'Flow cups',
  factKeepers: 'Keepers',
  factWater: 'Tap water',
  factSure: 'How sure',
  sureOf: (chance: number): Text => [`${chanceText(chance)} that a bucket is right`],
  hard: 'hard: it flocculates by itself',
  soft: 'not noted as hard',
  card: ({ name, zone, zoneSet, units }: Studio): Text => {
    const clocks = zoneSet ? t`Clocks of ${[zone]}` : t`Clocks of UTC (no zone is set)`;
    return t`${name === undefined ? [] : t`${said(name)}. `}${clocks}, ${[units]} units.`;
  },
  factClock: 'Clock',
  noZone: ['UTC: no zone is set; a keeper sets it with /studio set zone:America/St_Johns'] as Text,
  vessels: (vessels: readonly Vessel[], units: UnitSystem): Text =>
    vessels.length === 0
      ? ['none yet: /studio vessel name:"steel cup" tare:85.4g water:100.2g']
      : join(
          vessels.map((vessel) => t`${said(vessel.name)} (${[vesselText(vessel, units)]})`),
          ', ',
        ),
  cups: (cups: readonly StudioCup[]): Text =>
    cups.length === 0
      ? ['none named']
      : join(
          cups.map(({ name, kind }) => t`${said(name)} (${[kind]})`),
          ', ',
        ),
  keepers: (names: readonly string[]): Text =>
    names.length === 0
      ? ['whoever may manage this place']
      : join(
          names.map((name) => [said(name)]),
          ', ',
        ),
  notMention: (typed: string): Text =>
    t`“${said(typed)}” is not a role or channel that I can tell. Pick it with @ or #, or paste its number.`,
  emptyToSet: (option: string): Text =>
    t`${[option]}: nothing was typed after it, so nothing was set. What was set before stays; type the new one there.`,
  nothingToSet: ['Say what to set, such as zone:America/St_Johns or units:us.'] as Text,
  waterOutside: (g: number, units: UnitSystem): Text =>
    t`${[scaleText(g, units)]} of water is no cup to weigh glaze in: 20 g to 5 kg. Weigh the water alone, without the cup.`,
  vesselSet: (vessel: Vessel, ml: number | undefined, units: UnitSystem): Text =>
    t`${said(vessel.name)} is calibrated: ${[vesselText(vessel, units)]}${[ml === undefined ? '' : `, ${ml.toFixed(1)} ml`]}.`,
  cupSet: (name: string, kind: string): Text => t`Flow cup ${said(name)} (${[kind]}) is named.`,
  keeperSet: (name: string, keeper: boolean): Text =>
    keeper ? t`${said(name)} is a keeper now.` : t`${said(name)} is a member again.`,
};
