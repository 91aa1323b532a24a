import { definedOnly } from '../../definedOnly.ts';
import { type Studio, usualSure } from '../../studio/settings/studio.ts';
import type { Asking, Reply } from '../../contract/contract.ts';

export const studioCard = async (studio: Studio, { words, book }: Asking): Promise<Reply> => {
  const w = words.studio;
  const { schedule } = words;
  const names = new Map((await book.members()).map(({ id, name }) => [id, name]));
  const keepers = studio.keepers.map((id) => names.get(id) ?? words.someone);
  return {
    kind: 'answer',
    title: w.card(studio),
    facts: [
      { label: [schedule.factHours], text: schedule.hours(studio.hours) },
      { label: [schedule.factClosures], text: schedule.closures(studio.hours.closures) },
      { label: [schedule.factSessions], text: schedule.sessions(studio.sessions) },
      { label: [schedule.factDrying], text: schedule.drying(studio.drying) },
      { label: [schedule.factReminders], text: schedule.reminders(studio.reminders) },
      { label: [schedule.factMorning], text: schedule.morning(studio.morning) },
      { label: [w.factVessels], text: w.vessels(studio.vessels, studio.units) },
      { label: [w.factCups], text: w.cups(studio.cups) },
      { label: [w.factKeepers], text: w.keepers(keepers) },
      ...(studio.keeperRole === undefined
        ? []
        : [{ label: [w.factRole], text: w.roleMention(studio.keeperRole) }]),
      ...(studio.channel === undefined
        ? []
        : [{ label: [w.factChannel], text: w.channelMention(studio.channel) }]),
      { label: [w.factWater], text: [studio.hardWater ? w.hard : w.soft] },
      ...(studio.scoop === undefined
        ? []
        : [{ label: [w.factScoop], text: w.scoopOf(studio.scoop, studio.units) }]),
      ...(studio.deflocculant === undefined
        ? []
        : [{ label: [w.factDeflocculant], text: w.deflocculantOf(studio.deflocculant) }]),
      { label: [w.factSure], text: w.sureOf(studio.sure ?? usualSure) },
    ],
    data: {
      ...definedOnly({ name: studio.name }),
      zone: studio.zone,
      units: studio.units,
      vessels: studio.vessels.map(({ name, tare, water, temperature }) => ({
        name,
        tare,
        water,
        temperature,
      })),
      cups: studio.cups.map(({ name, kind }) => ({ name, kind })),
      keepers,
      ...definedOnly({ keeperRole: studio.keeperRole, channel: studio.channel }),
      hardWater: studio.hardWater,
      ...definedOnly({ deflocculant: studio.deflocculant, scoopGrams: studio.scoop }),
      sure: studio.sure ?? usualSure,
    },
  };
};
