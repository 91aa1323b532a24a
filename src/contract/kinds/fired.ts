import { faults } from '../../studio/firing/firedEvent.ts';
import type { Kind } from '../contract.ts';
import { several } from './picks.ts';

const outcomes = several(['good', ...faults], {
  ok: 'good',
  fine: 'good',
  'no-faults': 'good',
  none: 'good',
  crawled: 'crawling',
  crawl: 'crawling',
  ran: 'running',
  run: 'running',
  runs: 'running',
  runny: 'running',
  pinholed: 'pinholing',
  pinhole: 'pinholing',
  pinholes: 'pinholing',
  blistered: 'blistering',
  blister: 'blistering',
  blisters: 'blistering',
  shivered: 'shivering',
  shiver: 'shivering',
  crazed: 'crazing',
  craze: 'crazing',
  dunted: 'dunting',
  dunt: 'dunting',
  thin: 'too-thin',
  'thin-coat': 'too-thin',
  thick: 'too-thick',
  'thick-coat': 'too-thick',
  matt: 'dull',
  matte: 'dull',
  dry: 'dull',
  rough: 'dull',
  underfired: 'dull',
  'off-color': 'off-colour',
  'wrong-colour': 'off-colour',
  'wrong-color': 'off-colour',
  colour: 'off-colour',
  color: 'off-colour',
});
/** The outcome of a firing: good, or its faults. */
export const result: typeof outcomes = { ...outcomes, example: 'crawling' };

export interface PiecesFired {
  pieces: number;
  /** How many of the pieces had the fault, if that was said. */
  faulty?: number;
}

/** More pieces than this cannot be one result. */
const mostFired = 500;

/** How many pieces were fired, and how many of them had the fault: `4`, `4 mugs`, `2 of 4`. */
export const piecesFired: Kind<PiecesFired> = {
  control: 'text',
  example: '2 of 4',
  read(typed, { words }) {
    const [, first, second] =
      /^\s*(\d{1,3})(?:\s*(?:of|out of|\/)\s*(\d{1,3}))?(?:\s+\p{L}[\p{L}\s]*)?\s*$/iu.exec(typed) ?? [];
    const pieces = Number(second ?? first);
    if (first === undefined || !(pieces >= 1 && pieces <= mostFired))
      return { ok: false, why: words.fired.notPieces(typed) };
    if (second === undefined) return { ok: true, value: { pieces } };
    const faulty = Number(first);
    return faulty > pieces
      ? { ok: false, why: words.fired.moreFaulty(faulty, pieces) }
      : { ok: true, value: { pieces, faulty } };
  },
};
