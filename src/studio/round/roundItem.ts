import type { BucketState } from '../bucket/bucketState.ts';
import type { UnloggedChange } from '../contents/unloggedChange.ts';
import type { OpenQuestion } from '../openQuestion.ts';
import type { PieceState } from '../piece/foldPieces.ts';
import type { Reminder } from '../remind/reminder.ts';
import type { ResistCoat } from '../resist/resistCoat.ts';
import type { DryReady } from '../resist/overnight.ts';
import type { Verdict } from '../verdict/verdict.ts';

/** What waits for somebody's hands, the most urgent kind first. */
export const roundKinds = [
  'reminder',
  'hold',
  'unlogged',
  'step',
  'sieve',
  'second-cup',
  'reading',
  'coat',
  'piece',
  'question',
] as const;

export type RoundItem =
  /** `stirFirst` if the bucket has to be stirred before it. */
  | { kind: 'hold' | 'step' | 'sieve' | 'reading'; bucket: BucketState; verdict: Verdict; stirFirst: boolean }
  | { kind: 'unlogged'; bucket: BucketState; change: UnloggedChange }
  /** One reading that the logbook did not expect; a second cup settles it. */
  | { kind: 'second-cup'; bucket: BucketState; stirFirst: boolean }
  /** A reminder that was sent and not dealt with. */
  | { kind: 'reminder'; reminder: Reminder }
  | { kind: 'coat'; coat: ResistCoat; ready: DryReady }
  | { kind: 'piece'; piece: PieceState }
  | { kind: 'question'; question: OpenQuestion };
