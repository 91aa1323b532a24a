import { definedOnly } from '../definedOnly.ts';
import type { App } from './app.ts';
import type { Config } from './config.ts';
import { shownUrl } from '../room/access/hosts.ts';
import type { StudioId } from '../studio/ids.ts';

/** At a terminal the room runs in another process: its address is the one that it would open with these settings. */
export const tellRoomAddress = async (
  { store, rooms }: App,
  studio: StudioId,
  { ROOM, ROOM_BIND, ROOM_PORT, ROOM_STUDIO, ROOM_URL }: Config,
): Promise<void> => {
  if (ROOM === 'off') return;
  const studios = await store.people.studios();
  const isNamed = studios.some(
    ({ id, name }) => id === studio && (id === ROOM_STUDIO || name === ROOM_STUDIO),
  );
  if (ROOM_STUDIO !== undefined && !isNamed) return;
  rooms.set(studio, shownUrl({ bind: ROOM_BIND, port: ROOM_PORT, ...definedOnly({ url: ROOM_URL }) }));
};
