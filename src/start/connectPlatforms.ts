import type { App } from './app.ts';
import { chosenStudio } from './chosenStudio.ts';
import { UsageProblem } from './exitCodeOf.ts';
import type { Desk, Voice } from '../contract/contract.ts';
import type { Log } from '../contract/log.ts';
import type { Config } from './config.ts';
import type { Discord } from '../discord/connection/startDiscord.ts';
import { DiscordProblem } from '../discord/connection/discordProblem.ts';
import { keepConnected, type KeptConnected } from './keepConnected.ts';
import type { RunningRoom } from '../room/server/startRoom.ts';
import type { StudioId } from '../studio/ids.ts';
import { discordWords } from '../words/platform/discordWords.ts';
import { mainWords } from '../words/platform/mainWords.ts';

interface Wanted {
  config: Config;
  /** The demo's room is open to everybody. */
  demo: boolean;
  lan: boolean;
  newKeys: boolean;
  log: Log;
  tell(text: string): void;
  /** Nothing is connected, and no other try would change that. */
  fail(why: unknown): void;
}

/** Whose room it is: the one that was named, or the only one. Beside Discord a server's studio comes first, so there may be none yet. */
const roomStudio = async (
  app: App,
  { ROOM, ROOM_STUDIO, DISCORD_TOKEN }: Config,
): Promise<StudioId | undefined> => {
  if (ROOM === 'off') return undefined;
  if (ROOM_STUDIO !== undefined || DISCORD_TOKEN === undefined) return chosenStudio(app, ROOM_STUDIO);
  const [only, ...others] = await app.store.people.studios();
  return others.length === 0 ? only?.id : undefined;
};

const keepRoom = (
  app: App,
  studio: StudioId,
  { config, demo, lan, newKeys, log, tell, fail }: Wanted,
): KeptConnected<RunningRoom> =>
  keepConnected({
    connect: async () => {
      const { connectRoom } = await import('./connectRoom.ts');
      return connectRoom(app, config, { studio, open: demo, lan, newKeys, log, tell });
    },
    // With nothing beside it whoever started it sits there and reads why.
    isFinal: () => config.DISCORD_TOKEN === undefined,
    giveUp: fail,
    sentence: (why) => (why instanceof UsageProblem ? why.message : mainWords.roomTroubled),
    log,
  });

const keepDiscord = (
  app: App,
  token: string,
  room: KeptConnected<RunningRoom> | undefined,
  { config, log, fail }: Wanted,
): KeptConnected<Discord> => {
  const desk: Desk = {
    ...app.desk,
    dispatch: (request) => (room?.now()?.overheard(app.desk) ?? app.desk).dispatch(request),
  };
  return keepConnected({
    connect: async (lost) => {
      const { connectDiscord } = await import('./connectDiscord.ts');
      const discord = await connectDiscord(
        { ...app, desk },
        {
          token,
          ...(config.DISCORD_GUILD !== undefined && { devGuild: config.DISCORD_GUILD }),
          ...(config.DISCORD_API !== undefined && { api: config.DISCORD_API }),
        },
        { log, draw: async (chart) => (await import('../chart/chartPng.ts')).chartPng(chart), fatal: lost },
      );
      log.info({}, mainWords.connected);
      return discord;
    },
    isFinal: (why) => why instanceof DiscordProblem && why.kind === 'token',
    giveUp: (why) => {
      if (room) log.error({}, mainWords.roomWithoutDiscord(discordWords.problem.token));
      else fail(why);
    },
    sentence: (why) =>
      why instanceof DiscordProblem ? discordWords.problem[why.kind] : discordWords.notConnected,
    log,
  });
};

/** Speaks through whatever connection there is when there is something to say. */
const voiceOf = (kept: KeptConnected<{ voice: Voice }>): Voice => ({
  speak: async (...said) => kept.now()?.voice.speak(...said) ?? 'later',
});

export interface Platforms {
  /** The likeliest to be looked at first. */
  voices: Voice[];
  stop(): Promise<void>;
}

/** Connects the platforms that are wanted, each apart from the others: what befalls one leaves the others as they are. */
export const connectPlatforms = async (app: App, wanted: Wanted): Promise<Platforms> => {
  const studio = await roomStudio(app, wanted.config);
  const { DISCORD_TOKEN: token } = wanted.config;
  if (studio === undefined && token === undefined) throw new UsageProblem(mainWords.nothingOn);
  const room = studio === undefined ? undefined : keepRoom(app, studio, wanted);
  const discord = token === undefined ? undefined : keepDiscord(app, token, room, wanted);
  // On a phone before it is looked for in the room.
  const kept = [discord, room].filter((one) => one !== undefined);
  return {
    voices: kept.map(voiceOf),
    stop: async () => {
      for (const one of kept) await one.stop();
    },
  };
};
