import { outside } from '../physics/pail.ts';
import { leeway } from '../physics/settings.ts';
import type { Hands } from '../people/hands.ts';
import { byHead } from './byHead.ts';
import { toMiddle } from './toMiddle.ts';

/** So often in one visit at most. */
const rounds = 4;
/** Two weighings that differ by more are settled by a third. */
const agree = 0.015;
/** ln of the seconds, for a rung of flocculant, as keepers have come to expect (from memory). */
const usualRung = 0.2;
const mostRungs = 3;

const middleOf = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

/** What lies outside its window is weighed again before anything is changed. */
const weighedAgain = (hands: Hands, first: number): number => {
  const second = hands.weigh().value;
  return Math.abs(first - second) <= agree
    ? (first + second) / 2
    : middleOf([first, second, hands.weigh().value]);
};

const isOff = (seconds: number, { pail }: Hands): boolean => {
  const { low, high } = pail.kind.secondsWindow;
  return seconds < low * (1 - leeway.seconds) || seconds > high * (1 + leeway.seconds);
};

const timedAgain = (hands: Hands, first: number): number => {
  const second = hands.time().value;
  return Math.abs(Math.log(first / second)) <= 2 * leeway.seconds
    ? Math.sqrt(first * second)
    : middleOf([first, second, hands.time().value]);
};

/** A rung, or as many as it seems to need; below zero when it is thick. */
const rungsFor = (seconds: number, { pail }: Hands, sized: boolean): number => {
  const { low, high } = pail.kind.secondsWindow;
  const needed = Math.log((low + high) / 2 / seconds) / usualRung;
  const most = sized ? mostRungs : 1;
  return Math.sign(needed) * Math.min(most, Math.max(1, Math.round(Math.abs(needed))));
};

/** Weighs and times a stirred pail and puts right what is off, until a round finds nothing. */
const putRight = (hands: Hands, sized: boolean): void => {
  let loosened = false;
  for (let round = 0; round < rounds; round += 1) {
    const { weighed, timed } = hands.weighAndTime();
    if (outside(weighed.value, hands.pail.kind.gravityWindow) > leeway.gravity) {
      const gravity = weighedAgain(hands, weighed.value);
      if (outside(gravity, hands.pail.kind.gravityWindow) > leeway.gravity) {
        toMiddle(hands, gravity);
        hands.stir('usual');
        continue;
      }
    }
    if (!isOff(timed.value, hands)) return;
    const seconds = timedAgain(hands, timed.value);
    if (!isOff(seconds, hands)) return;
    if (seconds > hands.pail.kind.secondsWindow.high && !loosened) {
      loosened = true;
      hands.stir('on');
    } else {
      hands.doseRungs(rungsFor(seconds, hands, sized));
      hands.stir('usual');
    }
  }
};

const careful = (name: string, sized: boolean) =>
  byHead(name, () => (hands) => {
    hands.stir('usual');
    putRight(hands, sized);
  });

/** Stirs, weighs and times at every visit; one rung at a time. */
export const carefulKeeper = careful('careful', false);
/** The same, with doses as large as they seem to be needed. */
export const carefulSized = careful('sized', true);

const weighsEvery = 2 * 1_440;

/** Looks first, and weighs when the look is off or the last weighing is over two days old. */
export const frugalKeeper = byHead('frugal', () => {
  const weighed = new Map<number, number>();
  return (hands) => {
    hands.stir('usual');
    const last = weighed.get(hands.visit.bucket) ?? Number.NEGATIVE_INFINITY;
    if (hands.look() === 'right' && hands.now - last <= weighsEvery) return;
    weighed.set(hands.visit.bucket, hands.now);
    putRight(hands, false);
  };
});
