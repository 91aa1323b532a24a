import type { Group } from '../../src/contract/contract.ts';
import { remindMe } from './me.ts';
import { remindBy } from './by.ts';
import { remindDone, remindLater, remindNotMine } from './presses.ts';
import { listReminders } from './list.ts';

export const remindGroup: Group = {
  name: 'remind',
  about: (w) => w.reminder.about,
  leaves: [listReminders, remindMe, remindLater, remindDone, remindNotMine, remindBy],
};
