import { definedOnly } from '../definedOnly.ts';
import type { App } from './app.ts';
import { drawPng } from '../chart/drawAside.ts';
import { UsageProblem } from './exitCodeOf.ts';
import type { Desk, Voice } from '../contract/desk.ts';
import type { Log } from '../contract/log.ts';
import type { Config } from './config.ts';
import type { Discord } from '../discord/connection/startDiscord.ts';
import { DiscordProblem } from '../discord/connection/discordProblem.ts';
import { postElsewhere } from './postElsewhere.ts';
import { roomStudio } from './roomStudio.ts';
import { keepConnected, type KeptConnected } from './keepConnected.ts';
import type { RunningRoom } from '../room/server/startRoom.ts';
import type { StudioId } from '../studio/ids.ts';
import { StoreProblem } from '../store/engine/storeProblem.ts';
import { storeWords } from '../words/platform/storeWords.ts';
import { discordWords } from '../words/platform/discordWords.ts';
import { mainWords } from '../words/platform/mainWords.ts';

interface Wanted {
  config: Config;
  /** The demo's room needs no password. */
  demo: boolean;
  lan: boolean;
  newKeys: boolean;
  log: Log;
  /** Called with the status of each request to the room that is refused. */
  refused?: (status: number) => void;
  tell(text: string): void;
  /** Nothing is connected, and a retry would not help. */
  fail(why: unknown): void;
}

/** What is connected has its part of the store until it stops. */
const withPart = async <T extends { stop(): Promise<void> }>(
  part: { release(): Promise<void> },
  connect: () => Promise<T>,
): Promise<T> => {
  try {
    const connected = await connect();
    const stop = async () => {
      await connected.stop();
      await part.release();
    };
    return { ...connected, stop };
  } catch (error) {
    await part.release();
    throw error;
  }
};

const sentenceOf = (why: unknown, otherwise: string): string => {
  if (why instanceof StoreProblem) return storeWords.problem[why.kind](why.file);
  if (why instanceof DiscordProblem) return discordWords.problem[why.kind];
  return why instanceof UsageProblem ? why.message : otherwise;
};

const keepRoom = (
  app: App,
  studio: StudioId,
  { config, demo, lan, newKeys, log, refused, tell, fail }: Wanted,
): KeptConnected<RunningRoom> =>
  keepConnected({
    connect: async () => {
      const { connectRoom } = await import('./connectRoom.ts');
      const wanted = { studio, open: demo, lan, newKeys, log, tell, ...definedOnly({ refused }) };
      return connectRoom(app, config, wanted);
    },
    // If the room is the only platform, the operator is at the terminal and reads the error.
    isFinal: () => config.DISCORD_TOKEN === undefined,
    giveUp: fail,
    sentence: (why) => sentenceOf(why, mainWords.roomTroubled),
    log,
  });

const keepDiscord = (
  app: App,
  token: string,
  room: (KeptConnected<RunningRoom> & { of: StudioId }) | undefined,
  { config, log, fail }: Wanted,
): KeptConnected<Discord> => {
  const elsewhere = postElsewhere(app, log);
  const desk: Desk = {
    ...app.desk,
    dispatch: (request) => {
      const open = room?.of === request.studio ? room.now() : undefined;
      return (open?.postingDesk(app.desk) ?? elsewhere).dispatch(request);
    },
  };
  const sentence = (why: unknown) => sentenceOf(why, discordWords.notConnected);
  return keepConnected({
    connect: async (lost) => {
      const { connectDiscord } = await import('./connectDiscord.ts');
      const { SHARDS: shards } = config;
      const part = await app.store.takePart(shards === 'auto' ? 'all' : shards.ids, lost);
      const discord = await withPart(part, () =>
        connectDiscord(
          { ...app, desk },
          {
            token,
            ...definedOnly({
              servers: config.DISCORD_SERVERS,
              devGuild: config.DISCORD_GUILD,
              api: config.DISCORD_API,
              shards: shards === 'auto' ? undefined : shards,
            }),
          },
          { log, draw: drawPng, fatal: lost },
        ),
      );
      log.info({}, mainWords.connected);
      return discord;
    },
    isFinal: (why) =>
      (why instanceof DiscordProblem && why.kind === 'token') ||
      (why instanceof StoreProblem && why.kind === 'part-taken'),
    giveUp: (why) => {
      if (room) log.error({}, mainWords.roomWithoutDiscord(sentence(why)));
      else fail(why);
    },
    sentence,
    log,
  });
};

/** Sends through the platform's connection at the time. */
const voiceOf = (kept: KeptConnected<{ voice: Voice }>): Voice => ({
  speak: async (...said) => kept.now()?.voice.speak(...said) ?? 'later',
});

export interface Platforms {
  /** The one that a member most probably sees comes first. */
  voices: Voice[];
  /** Whether each platform that is wanted works now. */
  isRoomOpen(): boolean | 'off';
  isDiscordConnected(): boolean | 'off';
  phonesListening(): number;
  stop(): Promise<void>;
}

/** Connects the wanted platforms independently: when one fails, the others continue. */
export const connectPlatforms = async (app: App, wanted: Wanted): Promise<Platforms> => {
  const studio = await roomStudio(app, wanted.config, wanted.tell);
  const { DISCORD_TOKEN: token } = wanted.config;
  if (studio === undefined && token === undefined) throw new UsageProblem(mainWords.nothingOn);
  const room = studio === undefined ? undefined : { of: studio, ...keepRoom(app, studio, wanted) };
  const discord = token === undefined ? undefined : keepDiscord(app, token, room, wanted);
  // A message on a phone is seen sooner than one in the room.
  const kept = [discord, room].filter((one) => one !== undefined);
  return {
    voices: kept.map(voiceOf),
    isRoomOpen: () => (room ? room.now() !== undefined : 'off'),
    isDiscordConnected: () => (discord ? discord.now()?.isConnected() === true : 'off'),
    phonesListening: () => room?.now()?.phonesListening() ?? 0,
    stop: async () => void (await Promise.all(kept.map((one) => one.stop()))),
  };
};
