import { definedOnly } from '../../definedOnly.ts';
import { everyStream, refold, type StreamName } from './refold.ts';
import { saveStreamState } from './saveStreamState.ts';
import { writeAll, type Turns, type Writing } from '../engine/turns.ts';

/** Folds a state again from the entries and saves it. */
export const rebuildState = async ({ db }: Writing, name: StreamName): Promise<void> => {
  const { last, state } = await refold(db, name);
  const { studio, stream } = name;
  if (last === null) {
    await db.deleteFrom('streams').where('studio_id', '=', studio).where('stream_no', '=', stream).execute();
    return;
  }
  await saveStreamState(db, studio, stream, { seq: last, ...definedOnly({ state }) });
};

/** Folds every state again from the entries and saves it, one stream at a time; returns the number of streams. */
export const rebuildStates = async (turns: Turns): Promise<number> => {
  const streams = await turns.read('directory', ({ db }) => everyStream(db));
  for (const name of streams)
    await writeAll(turns, { logbook: name.studio }, (writing) => rebuildState(writing, name));
  turns.forget();
  return streams.length;
};
