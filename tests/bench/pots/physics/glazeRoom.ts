import { chance } from './chance.ts';
import { happenings, type Happening } from './happenings.ts';
import { somePail, type Pail } from './pail.ts';
import { pails, type RoomSettings } from './settings.ts';

/** Fresh mix that a keeper poured in. */
export interface TopUp {
  bucket: number;
  ml: number;
  gravity: number;
}

/** ln of how many times thicker water is than at 20 °C (Vogel's equation, its constants from memory). */
const thickerWater = (celsius: number): number =>
  Math.LN10 * (247.8 / (celsius + 133.15) - 247.8 / (20 + 133.15));

/** All pails of a room, and what befalls them. */
export class GlazeRoom {
  readonly settings: RoomSettings;
  readonly seed: number;
  readonly pails: readonly Pail[];
  readonly #coming: Happening[][];
  #now = 0;

  constructor(settings: RoomSettings, seed: number, days: number) {
    this.settings = settings;
    this.seed = seed;
    const numbers = Array.from({ length: settings.buckets }, (_, bucket) => bucket);
    this.pails = numbers.map((bucket) => somePail(seed, bucket));
    this.#coming = numbers.map((bucket) => happenings(settings, seed, bucket, days));
  }

  pail(bucket: number): Pail {
    const pail = this.pails[bucket];
    if (!pail) throw new Error(`there is no pail ${bucket}`);
    return pail;
  }

  get now(): number {
    return this.#now;
  }

  /** Lets everything befall the pails that does until then. */
  advance(to: number): void {
    if (to < this.#now) throw new Error('time runs forward only');
    this.#now = to;
    for (const [bucket, coming] of this.#coming.entries())
      while (coming[0] && coming[0].at <= to) coming.shift()?.befall(this.pail(bucket));
  }

  /** The room's, which changes from day to day. */
  get celsius(): number {
    return chance(this.seed, 'celsius', Math.floor(this.#now / 1_440)).within(this.settings.celsius);
  }

  /** Seconds that a pail takes through its own cup as warm as the room is now. */
  seconds(bucket: number): number {
    const beyond = this.pail(bucket).secondsAt(this.#now) - pails.water;
    return pails.water + beyond * Math.exp(thickerWater(this.celsius));
  }

  /** A keeper fills up what has run low, with fresh mix. */
  topUp(): TopUp[] {
    return this.pails.flatMap((pail, bucket) => {
      if (pail.volume >= pails.topUpBelow * pails.full) return [];
      const luck = chance(this.seed, bucket, 'top-up', Math.floor(this.#now / 1_440));
      const { gravityWindow, secondsWindow } = pail.kind;
      const gravity = (gravityWindow.low + gravityWindow.high) / 2 + luck.normal(pails.freshOff.gravity);
      const runs = Math.log((secondsWindow.low + secondsWindow.high) / 2 - pails.water);
      const ml = pails.full - pail.volume;
      pail.topUp(ml, gravity, runs + luck.normal(pails.freshOff.flow));
      return [{ bucket, ml, gravity }];
    });
  }
}
