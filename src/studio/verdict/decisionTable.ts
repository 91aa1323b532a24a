import type { Dont, FlowBand, GravityBand, Step } from './verdict.ts';

/** Whose hands a step asks for. A member gets `ask-keeper`, with the amounts ready. */
export type Hands = 'anyone' | 'keeper';

/** What must hold for a move of a cell to be the one; a cell's last move has none. */
export type Condition = 'stirred-short' | 'just-mixed' | 'no-way-to-look';

export type Amount = 'water' | 'half-water' | 'draw-off' | 'dry' | 'dose';

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

const look: Move[] = [
  { when: 'no-way-to-look', step: 'ask-keeper', hands: 'anyone', amounts: [], dont: ['water-on-looks'] },
  { step: 'measure', hands: 'anyone', amounts: [], dont: ['water-on-looks'] },
];

/**
 * The answer for a stirred bucket with a believed reading: gravity against its window, flow against its own.
 * The first move of a cell whose condition holds is the answer.
 */
export const grid: Record<GravityBand, Record<FlowBand, Move[]>> = {
  low: {
    thin: [tooWet],
    in: [tooWet],
    // Gelled, and then watered. Gels don't settle, so there is no clear water to draw off.
    thick: [
      stirOn,
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
      {
        when: 'just-mixed',
        step: 'measure',
        hands: 'anyone',
        amounts: [],
        dont: ['water-out'],
      },
      { step: 'flocculate', hands: 'anyone', amounts: ['dose'], then: 'measure', dont: ['water-out'] },
    ],
    in: [{ step: 'use', hands: 'anyone', amounts: [], dont: [] }],
    thick: [
      stirOn,
      {
        step: 'deflocculate',
        hands: 'keeper',
        amounts: [],
        then: 'measure',
        dont: ['water-to-thin-a-gel'],
      },
    ],
    unknown: look,
  },
  high: {
    thin: [{ step: 'add-water', hands: 'anyone', amounts: ['water'], then: 'flocculate', dont: ['use'] }],
    in: [{ step: 'add-water', hands: 'anyone', amounts: ['water'], then: 'measure', dont: ['use'] }],
    thick: [
      {
        step: 'add-water',
        hands: 'anyone',
        amounts: ['half-water'],
        then: 'measure',
        dont: ['all-at-once'],
      },
    ],
    unknown: [{ step: 'add-water', hands: 'anyone', amounts: ['water'], then: 'measure', dont: ['use'] }],
  },
};
