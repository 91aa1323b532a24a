import { outside } from '../physics/pail.ts';
import { leeway } from '../physics/settings.ts';
import { byHead } from './byHead.ts';
import { toMiddle } from './toMiddle.ts';

/** A quick stir, half the time. */
export const nobody = byHead('nobody', () => (hands) => {
  if (hands.happens('stirs at all', 0.5)) hands.stir('haste');
});

/** Of the pail, poured in by somebody who finds it thick (common practice). */
const splash = 0.015;

/** Stirs and looks, twice before anything goes in: water against thick, salt against thin. */
export const looksOnly = byHead('looks', () => (hands) => {
  hands.stir('usual');
  const look = hands.look();
  if (look === 'right' || hands.look() !== look) return;
  if (look === 'thick') hands.water(splash * hands.volumeByEye());
  else hands.doseRungs(1);
  hands.stir('haste');
});

/** Stirs and weighs once; never minds the flow. */
export const scaleOnly = byHead('scale', () => (hands) => {
  hands.stir('usual');
  const { value } = hands.weigh();
  if (outside(value, hands.pail.kind.gravityWindow) <= leeway.gravity) return;
  toMiddle(hands, value);
  hands.stir('usual');
});
