import type { App } from './app.ts';
import { UsageProblem } from './exitCodeOf.ts';
import { boardRows } from '../replies/bucket/boardRows.ts';
import type { Config } from './config.ts';
import type { Log } from '../contract/log.ts';
import type { Post } from '../room/ports.ts';
import { freshPasscode, freshToken, sealed } from '../room/access/secrets.ts';
import { startRoom, type RunningRoom } from '../room/server/startRoom.ts';
import { instant, memberId, type StudioId } from '../studio/ids.ts';
import type { LoggedEvent, Logbook } from '../studio/logbook/ports.ts';
import { roomWords } from '../words/platform/roomWords.ts';

interface RoomChoice {
  studio: StudioId;
  /** The demo, free of passwords. */
  open: boolean;
  /** For every phone on the network, not for this machine only. */
  lan: boolean;
  /** The passcode, or every keeper's way in, has been lost: make both anew. */
  newKeys: boolean;
  log: Log;
  tell(text: string): void;
}

type Settings = Pick<Config, 'ROOM_BIND' | 'ROOM_PORT' | 'ROOM_TRUST_PROXY'> & {
  ROOM_URL?: string | undefined;
};

const chartSizes = {
  small: { width: 440, panelHeight: 200 },
  large: { width: 960, panelHeight: 320 },
};

/** Opens the local room on the desk. */
export const connectRoom = async (
  { store, desk, words, clock }: App,
  settings: Settings,
  { studio, open, lan, newKeys, log, tell }: RoomChoice,
): Promise<RunningRoom> => {
  const { books, people, kept } = store;
  const { door, posts } = store.room<Post['reply']>(studio);
  const passcodeName = `room-passcode:${studio}`;
  const keptOr = async (name: string, make: () => string): Promise<string> => {
    const found = await kept.get(name);
    if (found !== undefined) return found;
    const made = make();
    await kept.set(name, made);
    return made;
  };
  const given = (await people.studios()).find(({ id }) => id === studio)?.name ?? roomWords.studioName;
  const named = (book: Logbook) => book.studio().then(({ name }) => name ?? given);
  let studioName = await books.read(studio, named);
  const isKeeper = (member: Post['member']) =>
    books.read(studio, async (book) => (await book.studio()).keepers.includes(member));
  /** The passcode and the first keeper's way in, told to whoever started it. */
  const tellKeys = async (room: RunningRoom): Promise<void> => {
    if (open) return tell(roomWords.demo);
    if (newKeys) for (const purpose of ['keeper', 'join'] as const) await door.endCodes(purpose);
    if (newKeys || (await kept.get(passcodeName)) === undefined) {
      const passcode = freshPasscode();
      const seal = await sealed(passcode);
      // Told first: one that is kept and was never told would let nobody in, one that is told and not kept is told anew.
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
      studio,
      get studioName() {
        return studioName;
      },
      zone: () => books.read(studio, async (book) => (await book.studio()).zone),
      open,
      door: Object.assign(door, {
        passcode: () => kept.get(passcodeName),
        setPasscode: (seal: string) => kept.set(passcodeName, seal),
      }),
      shelf: posts,
      people: {
        memberOf: (key, name) => people.memberOf(studio, 'room', key, name),
        all: () => books.read(studio, (book) => book.members()),
        follow: (listener) => store.followPeople(listener),
        standsFor: (member) => books.read(studio, (book) => book.standsFor(memberId(member))),
        isKeeper,
        setKeeper: async (member, keeper, by) => {
          await books.writeOnce(studio, `room-keeper:${freshToken()}`, async (book) => {
            const now = clock.now();
            const event: LoggedEvent = { kind: 'keeper', member, keeper };
            await book.logStudio(event, { at: now, loggedAt: now, by });
            return { keep: true, value: null };
          });
        },
      },
      board: () =>
        books.read(studio, async (book) => {
          studioName = await named(book);
          return boardRows(book, { now: clock.now(), words });
        }),
      draw: async (chart, look, size) => {
        const [{ chartSvg }, theme] = await Promise.all([
          import('../chart/chartSvg.ts'),
          import('../chart/theme.ts'),
        ]);
        return chartSvg(chart, theme[look], chartSizes[size]);
      },
    },
    {
      bind: lan ? '0.0.0.0' : settings.ROOM_BIND,
      port: settings.ROOM_PORT,
      trustProxy: settings.ROOM_TRUST_PROXY === 'on',
      pepper: await keptOr('room-pepper', freshToken),
      ...(settings.ROOM_URL !== undefined && { url: settings.ROOM_URL }),
    },
  ).catch((error: unknown) => {
    if (error instanceof Error && 'code' in error && error.code === 'EADDRINUSE')
      throw new UsageProblem(roomWords.inUse(settings.ROOM_PORT));
    throw error;
  });
  try {
    await tellKeys(room);
    if (lan) {
      const url = await room.invitation('join');
      const { default: qr } = await import('qrcode');
      tell(`${await qr.toString(url, { type: 'terminal', small: true })}\n${roomWords.lan(url)}`);
    }
    tell(roomWords.at(room.url));
  } catch (error) {
    await room.stop();
    throw error;
  }
  return room;
};

/** Whether a keeper has a name in the room: one of another platform cannot come in by it. */
const hasKeeper = async (store: App['store'], studio: StudioId): Promise<boolean> => {
  const claims = await store.room(studio).door.claims();
  const { keepers } = await store.books.read(studio, (book) => book.studio());
  return claims.some(({ member, secret }) => secret !== undefined && keepers.includes(member));
};
