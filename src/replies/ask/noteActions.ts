import type { BucketState } from '../../studio/bucket/bucketState.ts';
import type { NoteCommand } from '../../studio/handbook.ts';
import type { Action, Asking } from '../../contract/contract.ts';
import { printLine } from '../../contract/parseLine.ts';

interface Line {
  path: string[];
  typed?: Record<string, string>;
  /** The option that receives a known bucket. */
  bucket?: 'bucket' | 'first';
  /** A command that only reads: it can be pressed at once, unless a needed bucket is missing. */
  asks?: true;
  keeper?: true;
}

const lines: Record<NoteCommand, Line> = {
  'water-or-stir': { path: ['water-or-stir'], bucket: 'bucket', asks: true },
  reading: { path: ['reading'], bucket: 'bucket' },
  added: { path: ['added'], bucket: 'bucket' },
  stirred: { path: ['stirred'], bucket: 'bucket' },
  sieved: { path: ['sieved'], bucket: 'bucket' },
  dose: { path: ['dose'], bucket: 'bucket', asks: true },
  'dose-solution': { path: ['dose'], typed: { what: 'solution' }, asks: true },
  'dose-deflocculant': { path: ['dose'], typed: { what: 'deflocculant' }, bucket: 'bucket', keeper: true },
  'dip-time': { path: ['dip', 'time'], bucket: 'bucket' },
  'dip-tile': { path: ['dip', 'tile'], bucket: 'bucket' },
  'dip-absorption': { path: ['dip', 'absorption'] },
  prep: { path: ['prep'], bucket: 'bucket' },
  'coat-on': { path: ['coat', 'on'] },
  'coat-list': { path: ['coat', 'list'], asks: true },
  'coat-off': { path: ['coat', 'off'] },
  'bucket-list': { path: ['bucket', 'list'], asks: true },
  'bucket-show': { path: ['bucket', 'show'], bucket: 'bucket', asks: true },
  'bucket-log': { path: ['bucket', 'log'], bucket: 'bucket', asks: true },
  'bucket-hold': { path: ['bucket', 'hold'], bucket: 'bucket', keeper: true },
  'batch-correct': { path: ['batch', 'correct'], bucket: 'bucket' },
  'batch-blend': { path: ['batch', 'blend'], bucket: 'first' },
  'batch-plan': { path: ['batch', 'plan'] },
  'batch-recipes': { path: ['batch', 'recipes'], asks: true },
  'studio-vessel': { path: ['studio', 'vessel'], keeper: true },
  'studio-water': { path: ['studio', 'set'], typed: { water: 'hard' }, keeper: true },
  fired: { path: ['fired'], bucket: 'bucket' },
  faults: { path: ['faults'], bucket: 'bucket', asks: true, keeper: true },
  'remind-list': { path: ['remind', 'list'], asks: true },
  'remind-by': { path: ['remind', 'by'] },
  undo: { path: ['undo'] },
  help: { path: ['help'], asks: true },
};

/** A note's commands as buttons: those that the asker may use, with the bucket filled in if it is known. */
export const noteActions = (
  commands: readonly NoteCommand[],
  bucket: BucketState | undefined,
  { words, role }: Asking,
): Action[] =>
  commands.flatMap((command) => {
    const { path, typed, bucket: takes, asks, keeper } = lines[command];
    if (keeper && role !== 'keeper') return [];
    const known = takes !== undefined && bucket ? { [takes]: String(bucket.no) } : {};
    const whole = asks && (takes === undefined || bucket !== undefined);
    return [
      {
        label: words.ask.action(command),
        line: printLine(path, { ...known, ...typed }),
        press: whole ? 'run' : 'edit',
      },
    ];
  });
