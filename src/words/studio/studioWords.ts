import type { Studio, StudioCup, UnitSystem, Vessel } from '../../studio/settings/studio.ts';
import { chanceText, gramsText, massText, scaleText } from '../text/measures.ts';
import { join, said, t, type Text, saidNames } from '../text/text.ts';
import { vesselText } from '../text/vesselText.ts';

export const studioWords = {
  about: 'The studio: time zone, units, weighing cups, flow cups, keepers',
  show: 'This studio’s settings',
  ownName: 'What the studio is called',
  set: 'Its name, time zone, units, water, how sure to be, reminder channel, keepers’ role',
  vessel: 'Calibrate a weighing cup with the water that fills it',
  cup: 'Name a flow cup of the studio',
  keeper: 'Make a member a keeper, or a keeper a member',
  zone: 'Time zone: a large city in it, such as Lisbon, or America/St_Johns',
  units: 'Units for amounts',
  water: "The studio's tap water: hard water flocculates",
  sure: 'How sure to be that a bucket is right before the bot stops asking for readings (95 %)',
  scoop: 'How much dry batch a level scoop holds; amounts are then given in half scoops',
  deflocculant: 'The deflocculant that stands in the room, and its strength',
  role: 'The Discord role whose holders are keepers',
  channel: 'The Discord channel for reminders',
  name: 'What it is called',
  tare: 'Weight of the empty, dry cup',
  waterHeld: 'Weight of the water that fills it to the brim, without the cup',
  temperature: 'Temperature of that water (20 °C)',
  cupKind: 'Its kind; own for a cup that fits no standard',
  member: 'Which member',
  is: 'What they are from now on',
  factVessels: 'Weighing cups',
  factCups: 'Flow cups',
  factKeepers: 'Keepers',
  factRole: 'Keepers’ role',
  factChannel: 'Reminders’ channel',
  // Discord shows the name in its place; elsewhere it is what can be pasted back.
  roleMention: (id: string): Text => [`<@&${id}>`],
  channelMention: (id: string): Text => [`<#${id}>`],
  factWater: 'Tap water',
  factScoop: 'Powder scoop',
  scoopOf: (grams: number, units: UnitSystem): Text => [massText(grams, units)],
  factDeflocculant: 'Deflocculant',
  deflocculantOf: (what: string): Text => t`${said(what)}`,
  factSure: 'How sure',
  sureOf: (chance: number): Text => [`${chanceText(chance)} that a bucket is right`],
  hard: 'hard, which flocculates by itself',
  soft: 'not hard',
  card: ({ name, zone, zoneSet, units }: Studio): Text => {
    const clocks = zoneSet ? t`Time zone ${[zone]}` : t`Time zone UTC (no zone is set)`;
    return t`${name === undefined ? [] : t`${said(name)}. `}${clocks}, ${[units]} units.`;
  },
  factClock: 'Time zone',
  noZone: t`UTC, because no zone is set. A keeper can set it: /studio set zone:America/St_Johns`,
  vessels: (vessels: readonly Vessel[], units: UnitSystem): Text =>
    vessels.length === 0
      ? t`none yet; a keeper can calibrate one`
      : join(
          vessels.map((vessel) => t`${said(vessel.name)} (${[vesselText(vessel, units)]})`),
          ', ',
        ),
  cups: (cups: readonly StudioCup[]): Text =>
    cups.length === 0
      ? t`none yet; a keeper can name one`
      : join(
          cups.map(({ name, kind }) => t`${said(name)} (${[kind]})`),
          ', ',
        ),
  keepers: (names: readonly string[]): Text =>
    names.length === 0 ? t`whoever manages this server or room` : saidNames(names),
  notMention: (typed: string): Text =>
    t`“${said(typed)}” is not a role or channel that I know. Pick it with @ or #, or paste its number.`,
  emptyToSet: (option: string): Text =>
    t`Nothing was typed after ${[option]}:, so nothing was changed. Type the new value there.`,
  nothingToSet: t`Say what to set, such as zone:America/St_Johns or units:us.`,
  waterOutside: (g: number, units: UnitSystem): Text =>
    t`${[scaleText(g, units)]} of water does not fit a weighing cup, which holds 20 g to 5 kg. Weigh the water alone, without the cup.`,
  vesselSet: (vessel: Vessel, ml: number | undefined, units: UnitSystem): Text =>
    t`${said(vessel.name)} is calibrated: ${[vesselText(vessel, units)]}${[ml === undefined ? '' : `, ${ml.toFixed(1)} ml`]}.`,
  factCheck: 'Check it',
  vesselCheck: ({ tare, water }: Vessel, units: UnitSystem): Text =>
    t`Full, your scale should show ${[units === 'metric' ? gramsText(tare + water) : scaleText(tare + water, units)]}. If it does not, take this back and weigh again.`,
  looksLike: (name: string, other: string): Text =>
    t`“${said(name)}” looks just like ${said(other)}, and people would take one for the other. Nothing was saved: to set that one anew, type its name as it is there; else pick another name.`,
  cupSet: (name: string, kind: string): Text => t`The flow cup ${said(name)} (${[kind]}) is added.`,
  lastKeeper: t`That would leave the studio without a keeper, so nothing was changed. Name another first: /studio keeper member:…`,
  keeperSet: (name: string, keeper: boolean): Text =>
    keeper ? t`${said(name)} is a keeper now.` : t`${said(name)} is a member again.`,
};
