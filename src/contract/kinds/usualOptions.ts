import { needed, optional } from '../contract.ts';
import { bucket } from './bucket.ts';
import { note } from './texts.ts';
import { whenPast } from './when.ts';

/** Options that are the same in many commands. */
export const bucketOption = needed(bucket, (w) => w.reading.bucket);
export const noteOption = optional(note, (w) => w.note);
export const whenAndNote = { when: optional(whenPast, (w) => w.when), note: noteOption };
