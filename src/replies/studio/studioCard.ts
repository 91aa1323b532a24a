import { present } from '../../present.ts';
import { fact } from '../../contract/replyParts.ts';
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
    facts: present([
      fact(schedule.factHours, schedule.hours(studio.hours)),
      fact(schedule.factClosures, schedule.closures(studio.hours.closures)),
      fact(schedule.factSessions, schedule.sessions(studio.sessions)),
      fact(schedule.factDrying, schedule.drying(studio.drying, studio.units)),
      fact(schedule.factReminders, schedule.reminders(studio.reminders)),
      fact(schedule.factMorning, schedule.morning(studio.morning)),
      fact(w.factVessels, w.vessels(studio.vessels, studio.units)),
      fact(w.factCups, w.cups(studio.cups)),
      fact(w.factKeepers, w.keepers(keepers)),
      studio.keeperRole !== undefined && fact(w.factRole, w.roleMention(studio.keeperRole)),
      studio.channel !== undefined && fact(w.factChannel, w.channelMention(studio.channel)),
      fact(w.factWater, [studio.hardWater ? w.hard : w.soft]),
      studio.scoop !== undefined && fact(w.factScoop, w.scoopOf(studio.scoop, studio.units)),
      studio.deflocculant !== undefined && fact(w.factDeflocculant, w.deflocculantOf(studio.deflocculant)),
      fact(w.factSure, w.sureOf(studio.sure ?? usualSure)),
    ]),
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
