import { added } from '../../commands/added.ts';
import { ask } from '../../commands/ask.ts';
import { batchGroup } from '../../commands/batch/batch.ts';
import { bucketGroup } from '../../commands/bucket/bucket.ts';
import { coatGroup } from '../../commands/coat/coat.ts';
import { dipGroup } from '../../commands/dip/dip.ts';
import { dose } from '../../commands/dose.ts';
import { exportData } from '../../commands/export.ts';
import { forgetMe } from '../../commands/forgetMe.ts';
import { faults } from '../../commands/faults.ts';
import { fired } from '../../commands/fired.ts';
import { help } from '../../commands/help.ts';
import { noteGroup } from '../../commands/note/note.ts';
import { link } from '../../commands/link.ts';
import { prep } from '../../commands/prep.ts';
import { reading } from '../../commands/reading.ts';
import { redact } from '../../commands/redact.ts';
import { remindGroup } from '../../commands/remind/remind.ts';
import { round } from '../../commands/round.ts';
import { say } from '../../commands/say.ts';
import { sieved } from '../../commands/sieved.ts';
import { stirred } from '../../commands/stirred.ts';
import { studioGroup } from '../../commands/studio/studio.ts';
import { undo } from '../../commands/undo.ts';
import { waterOrStir } from '../../commands/waterOrStir.ts';
import type { Command } from '../contract/contract.ts';

/** Every command, in the order in which they are shown. */
export const commands: Command[] = [
  waterOrStir,
  reading,
  added,
  stirred,
  sieved,
  undo,
  say,
  ask,
  coatGroup,
  remindGroup,
  prep,
  dose,
  dipGroup,
  fired,
  faults,
  batchGroup,
  round,
  bucketGroup,
  noteGroup,
  studioGroup,
  redact,
  exportData,
  link,
  forgetMe,
  help,
];
