import { mkdtempSync, rmSync } from 'node:fs';
import { access } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Reply } from '../../../../src/contract/contract.ts';
import { speak } from '../../../../src/desk/speak.ts';
import { openApp, type App } from '../../../../src/start/app.ts';
import {
  instant,
  type Instant,
  type MemberId,
  type Role,
  type StudioId,
} from '../../../../src/studio/ids.ts';
import type { GlazeRoom } from '../physics/glazeRoom.ts';
import { habits, weighingCup } from '../physics/settings.ts';

/** Monday 2 March 2026, midnight in a studio that keeps UTC. */
const firstMidnight = 1_772_409_600_000;

const instantOf = ({ now }: GlazeRoom): Instant => instant(firstMidnight + Math.round(60_000 * now));

/** A file in memory, where the machine has one: a flush to a disk takes longer than all the rest. */
const folderFor = async (): Promise<string> => {
  const memory = '/dev/shm';
  const inMemory = await access(memory).then(
    () => true,
    () => false,
  );
  return mkdtempSync(join(inMemory ? memory : tmpdir(), 'pots-'));
};

/** The bot itself, in a studio with this room's pails and people. */
export class BotRoom {
  readonly #app: App;
  readonly #room: GlazeRoom;
  readonly #folder: string;
  readonly #studio: StudioId;
  readonly #keeper: MemberId;
  readonly #members: readonly MemberId[];
  #lines = 0;

  private constructor(app: App, room: GlazeRoom, folder: string, studio: StudioId, members: MemberId[]) {
    const [keeper] = members;
    if (keeper === undefined) throw new Error('there is nobody in the room');
    this.#app = app;
    this.#room = room;
    this.#folder = folder;
    this.#studio = studio;
    this.#members = members;
    this.#keeper = keeper;
  }

  static async open(room: GlazeRoom): Promise<BotRoom> {
    const folder = await folderFor();
    const app = await openApp({
      file: join(folder, 'pots.db'),
      clock: { now: () => instantOf(room) },
      onBug: (error) => {
        throw error;
      },
    });
    const studio = await app.store.people.studioOf('terminal', 'pots', 'Pots');
    const members: MemberId[] = [];
    for (let person = 0; person <= habits.people; person += 1)
      members.push(
        await app.store.people.memberOf(studio, 'terminal', `potter ${person}`, `Potter ${person}`),
      );
    const bot = new BotRoom(app, room, folder, studio, members);
    await bot.#setUp();
    return bot;
  }

  /** What a line is answered, from somebody of the room; the keeper is the first. */
  say(line: string, person: number, role: Role): Promise<Reply> {
    const member = this.#members[person] ?? this.#keeper;
    const speaker = { studio: this.#studio, member, role, now: instantOf(this.#room) };
    this.#lines += 1;
    return speak(line, `pots-${this.#lines}`, speaker, this.#app);
  }

  async must(line: string): Promise<void> {
    const reply = await this.say(line, 0, 'keeper');
    if (reply.kind !== 'answer') throw new Error(`${line}: ${JSON.stringify(reply.title)}`);
  }

  /** What the program does by itself once a day. */
  async night(): Promise<void> {
    await this.#app.store.learnAcross(new AbortController().signal);
  }

  async close(): Promise<void> {
    await this.#app.store.close();
    rmSync(this.#folder, { recursive: true });
  }

  async #setUp(): Promise<void> {
    const { settings, pails } = this.#room;
    await this.must('/studio set zone:UTC units:metric');
    for (const { weighingCup: cup, flowCup } of settings.kits) {
      await this.must(`/studio vessel name:"${cup}" tare:${weighingCup.tare}g water:${weighingCup.water}g`);
      await this.must(`/studio cup name:"${flowCup}" kind:own`);
    }
    const [{ weighingCup: vessel, flowCup }] = settings.kits;
    for (const [bucket, { volume, gravity, kind }] of pails.entries()) {
      const { gravityWindow, secondsWindow } = kind;
      const window = `${gravityWindow.low}-${gravityWindow.high}`;
      await this.must(
        `/bucket add name:"Pail ${bucket + 1}" pail:19l volume:${(volume / 1000).toFixed(1)}l gravity:${window} seconds:${secondsWindow.low}-${secondsWindow.high} cup:"${flowCup}"`,
      );
      const weight = (weighingCup.tare + weighingCup.water * gravity).toFixed(1);
      const seconds = this.#room.pail(bucket).secondsAt(this.#room.now).toFixed(1);
      await this.must(
        `/reading bucket:${bucket + 1} weight:${weight}g seconds:${seconds} stirred:yes vessel:"${vessel}" cup:"${flowCup}"`,
      );
    }
  }
}
