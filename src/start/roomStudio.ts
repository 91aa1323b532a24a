import type { App } from './app.ts';
import { chosenStudio } from './chosenStudio.ts';
import type { Config } from './config.ts';
import type { StudioId } from '../studio/ids.ts';
import { roomWords } from '../words/platform/roomWords.ts';

/** The name under which the room's studio is stored. */
const roomStudioSetting = 'room-studio';

/** The only studio; if there are several, the only one whose room has members. */
const onlyRoom = async (
  { people }: App['store'],
  studios: readonly StudioId[],
): Promise<StudioId | undefined> => {
  if (studios.length <= 1) return studios[0];
  const [only, ...others] = await people.studiosWithRoom();
  return others.length === 0 ? only : undefined;
};

/**
 * The room's studio: the one that was named, otherwise the one from before, even if servers have been added since. With
 * Discord there may be none until a server's studio exists.
 */
export const roomStudio = async (
  app: App,
  { ROOM, ROOM_STUDIO, DISCORD_TOKEN }: Pick<Config, 'ROOM' | 'ROOM_STUDIO' | 'DISCORD_TOKEN'>,
  tell: (text: string) => void,
): Promise<StudioId | undefined> => {
  if (ROOM === 'off') return undefined;
  const { people, kept } = app.store;
  const studios = await people.studios();
  const before = await kept.get(roomStudioSetting);
  const found =
    ROOM_STUDIO === undefined
      ? (studios.find(({ id }) => id === before)?.id ??
        (await onlyRoom(
          app.store,
          studios.map(({ id }) => id),
        )))
      : undefined;
  if (found === undefined && ROOM_STUDIO === undefined && DISCORD_TOKEN !== undefined) {
    if (studios.length > 0) tell(roomWords.whoseRoom(studios));
    return undefined;
  }
  const studio = found ?? (await chosenStudio(app, ROOM_STUDIO));
  if (studio !== before) await kept.set(roomStudioSetting, studio);
  return studio;
};
