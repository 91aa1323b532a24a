import { chance, type Chance } from '../physics/chance.ts';
import type { GlazeRoom } from '../physics/glazeRoom.ts';
import { outside, type Pail } from '../physics/pail.ts';
import { pails, stirredFor, takes, type Deed, type Kit } from '../physics/settings.ts';
import { timing, weighing, type Read } from './readings.ts';
import type { Score } from './score.ts';
import type { Visit } from './visits.ts';

const noted = (astray: number | undefined) => (astray === undefined ? {} : { astray });

export type Look = 'thin' | 'right' | 'thick';

/** What was read, and the bucket that it was taken from, or written down for, by mistake. */
export interface Measured extends Read {
  astray?: number;
}

/** Grams of heptahydrate in a millilitre of the saturated solution at 20 °C: 25.3 % of MgSO4, density 1.286. */
const saltInMl = 1.286 * 0.253 * (246.47 / 120.37);

/** One person at one bucket: what their hands do, how long it takes, and how it goes wrong. */
export class Hands {
  readonly visit: Visit;
  kit: Kit;
  /** Stirred in this visit, with nothing gone in since. */
  isMixed = false;
  readonly #room: GlazeRoom;
  readonly #score: Score;
  /** Mistakes of bucket happen on paper, instead of in the hand. */
  readonly #writes: boolean;
  readonly #times = new Map<string, number>();

  constructor(room: GlazeRoom, visit: Visit, score: Score, writes: boolean) {
    this.#room = room;
    this.visit = visit;
    this.#score = score;
    this.#writes = writes;
    this.kit = this.#luck('kit').pick(room.settings.kits);
  }

  get pail(): Pail {
    return this.#room.pail(this.visit.bucket);
  }

  /** Minutes since the first midnight. */
  get now(): number {
    return this.#room.now;
  }

  get celsius(): number {
    return this.#room.celsius;
  }

  /** The n-th time of something in this visit has a luck of its own. */
  #luck(what: string): Chance {
    const times = (this.#times.get(what) ?? 0) + 1;
    this.#times.set(what, times);
    return chance(this.#room.seed, 'visit', this.visit.no, what, times);
  }

  /** Has something else to do meanwhile. */
  wait(minutes: number): void {
    this.#room.advance(this.#room.now + minutes);
  }

  /** Lets time pass over a deed. */
  spend(deed: Deed): void {
    this.#score.spend(deed);
    this.wait(takes[deed]);
  }

  happens(what: string, probability: number): boolean {
    return this.#luck(what).happens(probability);
  }

  forgets(what: 'stir' | 'addition'): boolean {
    const { faults } = this.#room.settings;
    return this.happens(`forgets ${what}`, what === 'stir' ? faults.stirUnlogged : faults.additionUnlogged);
  }

  stir(how: 'usual' | 'on' | 'haste'): void {
    this.spend(({ usual: 'stir', on: 'stirOn', haste: 'hasteStir' } as const)[how]);
    this.pail.stir(this.now, how === 'on');
    this.isMixed = true;
  }

  sieve(): void {
    this.spend('sieve');
    this.pail.stir(this.now, false);
    this.isMixed = true;
  }

  weighAndTime(): { weighed: Measured; timed: Measured } {
    this.spend('weighAndTime');
    const astray = this.#astray();
    return { weighed: this.#weighed(astray), timed: this.#timed(astray) };
  }

  weigh(): Measured {
    this.spend('weigh');
    return this.#weighed(this.#astray());
  }

  time(): Measured {
    this.spend('time');
    return this.#timed(this.#astray());
  }

  /** How it runs off the hand, to somebody who looks or only says so. */
  look(): Look {
    this.spend('glance');
    const luck = this.#luck('look');
    return luck.happens(this.#room.settings.faults.blindLook) ? 'right' : this.#felt(luck);
  }

  /** How some of it runs in a jar, with so many rungs undone there; whoever tries that looks. To warm it takes as long again. */
  lookInJar(rungs: number, isWarmed = false): Look {
    this.spend('pour');
    if (isWarmed) this.spend('pour');
    this.spend('glance');
    this.pail.thicken(-rungs);
    const look = this.#felt(this.#luck('jar'), isWarmed);
    this.pail.thicken(rungs);
    return look;
  }

  #felt(luck: Chance, isWarm = false): Look {
    const felt =
      (isWarm ? this.pail.secondsAt(this.now) : this.#room.seconds(this.visit.bucket)) *
      Math.exp(luck.normal(this.#room.settings.noise.look));
    const { low, high } = this.pail.kind.secondsWindow;
    if (outside(felt, { low, high }) === 0) return 'right';
    return felt < low ? 'thin' : 'thick';
  }

  /** What the pail holds, judged by eye. */
  volumeByEye(): number {
    return this.pail.volume * Math.exp(this.#luck('eye').normal(this.#room.settings.noise.eye));
  }

  /** What goes in below the rim, seen as it is poured. */
  get headroom(): number {
    return Math.max(0, pails.rim - this.pail.volume);
  }

  /** Takes glaze out, to make room. */
  ladle(ml: number): void {
    this.spend('pour');
    this.pail.dip(ml);
  }

  /** Goes for the cups that the bucket's windows were set with. */
  fetchKit(): void {
    [this.kit] = this.#room.settings.kits;
  }

  /** Water in; below zero it is drawn off. */
  water(ml: number): void {
    this.spend('pour');
    this.#change(() => this.pail.pourWater(ml * this.#pour()));
  }

  powder(grams: number): void {
    this.spend('powder');
    this.#change(() => this.pail.addPowder(grams * this.#pour()));
  }

  /** Flocculant, in ml of the saturated solution. */
  dose(ml: number): void {
    this.#dose(() => this.pail.salt(ml * saltInMl * this.#pour()));
  }

  /** Flocculant by rungs of 0.03 % of the dry mass; below zero a deflocculant that undoes as much. */
  doseRungs(rungs: number): void {
    this.#dose(() => this.pail.thicken(rungs * this.#pour()));
  }

  dip(): void {
    const { pail, now } = this;
    this.#score.dips += 1;
    if (pail.isRight(now)) this.#score.right += 1;
    if (pail.gravityIsRight()) this.#score.gravityRight += 1;
    if (pail.flowIsRight(now)) this.#score.flowRight += 1;
    if (pail.rested(now) <= stirredFor) this.#score.stirred += 1;
    pail.dip(this.#luck('dip').within(pails.dip));
  }

  #pour(): number {
    return Math.exp(this.#luck('pour').normal(this.#room.settings.noise.pour));
  }

  /** Harm is a change of what was inside its window, or one that leads further out. */
  #change(act: () => void): void {
    const away = () => outside(this.pail.gravity, this.pail.kind.gravityWindow);
    const before = away();
    act();
    this.isMixed = false;
    this.#score.change(before === 0 || away() > before);
  }

  #dose(act: () => void): void {
    this.spend('pour');
    const away = () => outside(this.pail.secondsAt(this.now), this.pail.kind.secondsWindow);
    const before = away();
    act();
    this.isMixed = false;
    this.#score.change(before === 0 || away() > before);
  }

  #astray(): number | undefined {
    const { pails, settings } = this.#room;
    const luck = this.#luck('astray');
    if (!luck.happens(settings.faults.wrongBucket) || pails.length < 2) return undefined;
    return (this.visit.bucket + 1 + Math.floor(luck.next() * (pails.length - 1))) % pails.length;
  }

  #weighed(astray: number | undefined): Measured {
    return { ...weighing(this.#room, this.#from(astray), this.kit, this.#luck('weigh')), ...noted(astray) };
  }

  #timed(astray: number | undefined): Measured {
    return { ...timing(this.#room, this.#from(astray), this.kit, this.#luck('time')), ...noted(astray) };
  }

  #from(astray: number | undefined): number {
    return this.#writes ? this.visit.bucket : (astray ?? this.visit.bucket);
  }
}
