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
});
/** How it came out: good, or its faults. */
export const result: typeof outcomes = { ...outcomes, example: 'crawling' };

export interface PiecesFired {
  pieces: number;
  /** How many of them had it, when that was said. */
  faulty?: number;
}

/** More than this are not one result. */
const most = 500;

/** How many pieces came out: `4`, `4 mugs`, or how many of them had the fault: `2 of 4`. */
export const piecesFired: Kind<PiecesFired> = {
  control: 'text',
  example: '2 of 4',
  read(typed, { words }) {
    const [, first, second] =
      /^\s*(\d{1,3})(?:\s*(?:of|out of|\/)\s*(\d{1,3}))?(?:\s+\p{L}[\p{L}\s]*)?\s*$/iu.exec(typed) ?? [];
    const pieces = Number(second ?? first);
    if (first === undefined || !(pieces >= 1 && pieces <= most))
      return { ok: false, why: words.fired.notPieces(typed) };
    if (second === undefined) return { ok: true, value: { pieces } };
    const faulty = Number(first);
    return faulty > pieces
      ? { ok: false, why: words.fired.moreFaulty(faulty, pieces) }
      : { ok: true, value: { pieces, faulty } };
  },
};
