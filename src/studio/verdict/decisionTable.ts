import type { Dont, FlowBand, GravityBand, Step } from './verdict.ts';

/** Who may do a step. A member gets `ask-keeper`, with the amounts. */
export type Hands = 'anyone' | 'keeper';

/** The condition for a move of a cell; a cell's last move has none. */
export type Condition = 'stirred-short' | 'just-mixed' | 'no-way-to-look' | 'gels-by-itself';

export type Amount = 'water' | 'half-water' | 'draw-off' | 'dry' | 'dose' | 'loosening';

export interface Move {
  when?: Condition;
  step: Step;
  hands: Hands;
  amounts: Amount[];
  then?: Step;
  dont: Dont[];
}

const tooWet: Move = {
  step: 'draw-off-water',
  hands: 'keeper',
  amounts: ['draw-off', 'dry'],
  then: 'measure',
  dont: ['use', 'water-in', 'flocculant-to-hide-water'],
};

const stirOn: Move = {
  when: 'stirred-short',
  step: 'stir-on',
  hands: 'anyone',
  amounts: [],
  then: 'measure',
  dont: ['water-to-thin-a-gel'],
};

/** A borate gel builds up again however much deflocculant goes in (common practice): its keeper finds a lower window. */
const gelled: Move = {
  when: 'gels-by-itself',
  step: 'ask-keeper',
  hands: 'anyone',
  amounts: [],
  dont: ['water-to-thin-a-gel', 'loosen-a-borate-gel'],
};

const look: Move[] = [
  { when: 'no-way-to-look', step: 'ask-keeper', hands: 'anyone', amounts: [], dont: ['water-on-looks'] },
  { step: 'measure', hands: 'anyone', amounts: [], dont: ['water-on-looks'] },
];

const addWater: Move = {
  step: 'add-water',
  hands: 'anyone',
  amounts: ['water'],
  then: 'measure',
  dont: ['use'],
};

/**
 * The step for a stirred bucket with a believed reading, by gravity and flow against their windows. The first move of
 * a cell whose condition holds is the step.
 */
export const grid: Record<GravityBand, Record<FlowBand, Move[]>> = {
  low: {
    thin: [tooWet],
    in: [tooWet],
    // A gel that was thinned with water. Gels do not settle, so there is no clear water to draw off.
    thick: [
      stirOn,
      gelled,
      {
        step: 'add-dry',
        hands: 'keeper',
        amounts: ['dry'],
        then: 'deflocculate',
        dont: ['use', 'water-to-thin-a-gel'],
      },
    ],
    unknown: look,
  },
  in: {
    thin: [
      { when: 'just-mixed', step: 'measure', hands: 'anyone', amounts: [], dont: ['water-out'] },
      { step: 'flocculate', hands: 'anyone', amounts: ['dose'], then: 'measure', dont: ['water-out'] },
    ],
    in: [{ step: 'use', hands: 'anyone', amounts: [], dont: [] }],
    thick: [
      stirOn,
      gelled,
      {
        step: 'deflocculate',
        hands: 'keeper',
        amounts: ['loosening'],
        then: 'measure',
        dont: ['water-to-thin-a-gel'],
      },
    ],
    unknown: look,
  },
  high: {
    thin: [{ ...addWater, then: 'flocculate' }],
    in: [addWater],
    thick: [
      { step: 'add-water', hands: 'anyone', amounts: ['half-water'], then: 'measure', dont: ['all-at-once'] },
    ],
    unknown: [addWater],
  },
};
