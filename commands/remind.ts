import type { Group } from '../src/contract/contract.ts';
import { remindMe } from './remind/me.ts';
import { remindBy } from './remind/by.ts';
import { remindDone, remindLater, remindNotMine } from './remind/presses.ts';
import { listReminders } from './remind/list.ts';

export const remindGroup: Group = {
  name: 'remind',
  about: (w) => w.reminder.about,
  leaves: [listReminders, remindMe, remindLater, remindDone, remindNotMine, remindBy],
};
