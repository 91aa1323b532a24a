import { chance } from './chance.ts';
import { leeway, pails, stirredFor } from './settings.ts';

export interface Window {
  low: number;
  high: number;
}

/** What a pail is by nature, and what it was set up to be. */
export interface PailKind {
  gravityWindow: Window;
  secondsWindow: Window;
  /** Gravity of its dry grains. */
  grains: number;
  perGravity: number;
  perRung: number;
  gel: number;
}

const middle = ({ low, high }: Window): number => (low + high) / 2;
/** How far a value lies outside a window. */
export const outside = (value: number, { low, high }: Window): number =>
  Math.max(low - value, value - high, 0);

/** Of the dry mass: one rung of heptahydrate. */
const rung = 0.0003;

/** The truth of one pail: water and grains in grams, a millilitre of water weighing a gram. */
export class Pail {
  readonly kind: PailKind;
  water: number;
  grains: number;
  /** ln of the seconds beyond water's, at mid-window gravity, after a usual stir at 20 °C. */
  flow: number;
  #stirred = Number.NEGATIVE_INFINITY;
  #loosened = Number.NEGATIVE_INFINITY;

  constructor(kind: PailKind, ml: number = pails.full) {
    this.kind = kind;
    const gravity = middle(kind.gravityWindow);
    // The volume that is grains, by the two densities.
    const part = (gravity - 1) / (kind.grains - 1);
    this.water = (1 - part) * ml;
    this.grains = part * kind.grains * ml;
    this.flow = Math.log(middle(kind.secondsWindow) - pails.water);
  }

  get volume(): number {
    return this.water + this.grains / this.kind.grains;
  }

  get gravity(): number {
    return (this.water + this.grains) / this.volume;
  }

  /** Through its own cup, after a stir, at 20 °C. */
  secondsAt(at: number): number {
    const { perGravity, gravityWindow, gel } = this.kind;
    const loose = at - this.#loosened < pails.gelsAgain ? gel : 0;
    return pails.water + Math.exp(this.flow + perGravity * (this.gravity - middle(gravityWindow)) - loose);
  }

  pourWater(ml: number): void {
    this.water = Math.max(0.2 * this.grains, this.water + ml);
  }

  addPowder(grams: number): void {
    this.grains += grams;
  }

  /** Flocculant, in rungs of its dry mass; below zero loosens, as a deflocculant does. */
  thicken(rungs: number): void {
    this.flow += rungs * this.kind.perRung;
  }

  /** Salt by the gram. */
  salt(grams: number): void {
    this.thicken(grams / (rung * this.grains));
  }

  /** Takes glaze out as it is. */
  dip(ml: number): void {
    const left = 1 - Math.min(ml, 0.9 * this.volume) / this.volume;
    this.water *= left;
    this.grains *= left;
  }

  /** Fresh mix of the same glaze: its gravity and flow mingle with the rest. */
  topUp(ml: number, gravity: number, flow: number): void {
    const share = ml / (ml + this.volume);
    const part = (gravity - 1) / (this.kind.grains - 1);
    this.water += (1 - part) * ml;
    this.grains += part * this.kind.grains * ml;
    this.flow += share * (flow - this.flow);
  }

  stir(at: number, long: boolean): void {
    this.#stirred = at;
    if (long) this.#loosened = at;
  }

  rested(at: number): number {
    return at - this.#stirred;
  }

  /** Gravity of a cupful from its top: at rest the grains sink. */
  gravityAtTop(at: number): number {
    const rested = this.rested(at);
    const sunk = rested < stirredFor ? 0 : pails.sinks * Math.min(1, rested / 1_440);
    return 1 + (this.gravity - 1) * (1 - sunk);
  }

  gravityIsRight(): boolean {
    return outside(this.gravity, this.kind.gravityWindow) <= leeway.gravity;
  }

  /** Windows are of 20 °C: what runs slowly because it is cold is as right as it was. */
  flowIsRight(at: number): boolean {
    const { low, high } = this.kind.secondsWindow;
    const seconds = this.secondsAt(at);
    return seconds >= low * (1 - leeway.seconds) && seconds <= high * (1 + leeway.seconds);
  }

  isRight(at: number): boolean {
    return this.gravityIsRight() && this.flowIsRight(at) && this.rested(at) <= stirredFor;
  }
}

/** As a keeper sets it, to so many decimals. */
const around = (value: number, half: number, decimals: number): Window => ({
  low: Number((value - half).toFixed(decimals)),
  high: Number((value + half).toFixed(decimals)),
});

/** A pail as it may be, and always the same for the same words. */
export const somePail = (...words: readonly (string | number)[]): Pail => {
  const luck = chance(...words, 'pail');
  return new Pail({
    gravityWindow: around(luck.within(pails.middleGravity), luck.within(pails.halfGravity), 3),
    secondsWindow: around(luck.within(pails.middleSeconds), luck.within(pails.halfSeconds), 1),
    grains: luck.within(pails.grains),
    perGravity: luck.within(pails.perGravity),
    perRung: luck.within(pails.perRung),
    gel: luck.within(pails.gel),
  });
};
