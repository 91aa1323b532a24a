import { definedOnly } from '../definedOnly.ts';
import type { App } from './app.ts';
import { UsageProblem } from './exitCodeOf.ts';
import { drawSvg } from '../chart/drawAside.ts';
import { dark, light } from '../chart/theme.ts';
import { boardRows } from '../replies/bucket/boardRows.ts';
import type { Config } from './config.ts';
import type { Log } from '../contract/log.ts';
import type { Post } from '../room/ports.ts';
import { freshPasscode, freshToken, hashSecret } from '../room/access/secrets.ts';
import { startRoom, type RunningRoom } from '../room/server/startRoom.ts';
import { instant, memberId, type StudioId } from '../studio/ids.ts';
import { roomWords } from '../words/platform/roomWords.ts';
import { roomNotebook } from './roomNotebook.ts';

interface RoomChoice {
  studio: StudioId;
  /** The demo, without passwords. */
  open: boolean;
  /** Whether the whole network can reach it, not only this machine. */
  lan: boolean;
  /** Makes a new passcode and a new keeper's invitation, after they were lost. */
  newKeys: boolean;
  log: Log;
  /** Called with the status of each request that is refused. */
  refused?: (status: number) => void;
  tell(text: string): void;
}

type Settings = Pick<Config, 'ROOM_BIND' | 'ROOM_PORT' | 'ROOM_TRUST_PROXY'> & {
  ROOM_URL?: string | undefined;
};

const themes = { dark, light };
const chartSizes = { small: { width: 440, panelHeight: 200 }, large: { width: 960, panelHeight: 320 } };

/** Starts the local room on the desk. */
export const connectRoom = async (
  app: Pick<App, 'store' | 'desk' | 'words' | 'clock' | 'rooms' | 'handbook'>,
  settings: Settings,
  { studio, open, lan, newKeys, log, refused, tell }: RoomChoice,
): Promise<RunningRoom> => {
  const { store, desk, words, clock, rooms } = app;
  const { books, people, kept } = store;
  const { door: credentials, posts } = store.room<Post['reply']>(studio);
  const passcodeName = `room-passcode:${studio}`;
  const given = (await people.studios()).find(({ id }) => id === studio)?.name ?? roomWords.studioName;
  const isKeeper = (member: Post['member']) =>
    books.read(studio, async (book) => (await book.studio()).keepers.includes(member));
  /** Prints the passcode and the first keeper's invitation. */
  const tellKeys = async (room: RunningRoom): Promise<void> => {
    if (open) return tell(roomWords.demo);
    // A new invitation replaces the one that an earlier start printed.
    await credentials.endCodes('keeper');
    if (newKeys) await credentials.endCodes('join');
    if (newKeys || (await kept.get(passcodeName)) === undefined) {
      const passcode = freshPasscode();
      const seal = await hashSecret(passcode);
      // Printed before it is stored: if the program dies in between, the next start makes another. Otherwise a passcode
      // might be stored that nobody knows.
      tell(roomWords.passcode(passcode));
      await kept.set(passcodeName, seal);
    }
    const ownerless = !(await hasKeeper(store, studio));
    if (ownerless || newKeys) {
      const invitation = await room.invitation('keeper');
      tell(ownerless ? roomWords.firstKeeper(invitation) : roomWords.newKeeper(invitation));
    }
  };
  const room = await startRoom(
    {
      desk,
      words,
      clock: { now: () => clock.now(), before: (ms) => instant(clock.now() - ms) },
      log,
      ...definedOnly({ refused }),
      studio,
      setUp: () =>
        books.read(studio, async (book) => {
          const { name = given, zone, zoneSet = false, vessels } = await book.studio();
          return { name, zone, zoneSet, cups: vessels.length };
        }),
      open,
      credentials: Object.assign(credentials, {
        passcode: () => kept.get(passcodeName),
        setPasscode: (seal: string) => kept.set(passcodeName, seal),
      }),
      postStore: posts,
      people: {
        memberOf: (key, name) => people.memberOf(studio, 'room', key, name),
        all: () => books.read(studio, (book) => book.members()),
        follow: (listener) => store.followPeople(listener),
        standsFor: (member) => books.read(studio, (book) => book.standsFor(memberId(member))),
        isKeeper,
        setKeeper: (member, keeper, by) =>
          books.writeOnce(studio, `room-keeper:${freshToken()}`, async (book) => {
            const now = clock.now();
            const event = { kind: 'keeper', member, keeper } as const;
            const { state } = await book.logStudio(event, { at: now, loggedAt: now, by });
            // In the demo anybody can become a keeper again.
            const keep = open || keeper || state.keepers.length > 0;
            return { keep, value: keep };
          }),
      },
      board: () => books.read(studio, (book) => boardRows(book, { now: clock.now(), words })),
      bucketNames: () =>
        books.read(
          studio,
          async (book) => new Map((await book.buckets()).map(({ no, settings }) => [no, settings.name])),
        ),
      notebook: roomNotebook(app, studio),
      draw: (chart, look, size) => drawSvg(chart, themes[look], chartSizes[size], size === 'large'),
    },
    {
      bind: lan ? '0.0.0.0' : settings.ROOM_BIND,
      port: settings.ROOM_PORT,
      trustProxy: settings.ROOM_TRUST_PROXY === 'on',
      pepper: await kept.getOrSet('room-pepper', freshToken()),
      ...definedOnly({ url: settings.ROOM_URL }),
    },
  ).catch((error: unknown) => {
    if (error instanceof Error && 'code' in error && error.code === 'EADDRINUSE')
      throw new UsageProblem(roomWords.inUse(settings.ROOM_PORT));
    throw error;
  });
  rooms.set(studio, room.url);
  try {
    // Of several processes that start at once one makes a passcode, and the others find it.
    const part = await store.takePart({ room: studio }, () => undefined);
    try {
      await tellKeys(room);
    } finally {
      await part.release();
    }
    if (lan) {
      const url = await room.invitation('join');
      const { renderUnicodeCompact } = await import('uqr');
      tell(`${renderUnicodeCompact(url, { ecc: 'M', border: 2 })}\n${roomWords.lan(url)}`);
    }
    tell(roomWords.at(room.url));
  } catch (error) {
    await room.stop();
    throw error;
  }
  return room;
};

/** Whether a keeper has claimed a name in the room: a keeper from another platform cannot sign in here. */
const hasKeeper = async (store: App['store'], studio: StudioId): Promise<boolean> => {
  const claims = await store.room(studio).door.claims();
  const { keepers } = await store.books.read(studio, (book) => book.studio());
  return claims.some(({ member, secret }) => secret !== undefined && keepers.includes(member));
};
