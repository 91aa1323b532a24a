import { withoutControls } from '../../contract/plainText.ts';
import { meanings } from '../../notebook/meanings.ts';
import type { Question } from '../../notebook/notebookSettings.ts';
import type { WireNotebookQuestion } from '../../room/wire.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { roomNotebookWords as w } from '../../words/platform/roomNotebookWords.ts';

const units = ['ml', 'l', 'g', 'kg', 'oz', 'lb'] as const;

/** What only a keeper can tell of a notebook, with what they can answer. */
export const questionOf = (question: Question): WireNotebookQuestion => {
  const asked = (ask: string) => withoutControls(ask);
  switch (question.kind) {
    case 'meaning':
      return {
        ask: asked(w.whichMeaning(question.column, question.samples)),
        of: 'column',
        column: question.column,
        choices: meanings.map((value) => ({ name: w.meanings[value], value })),
      };
    case 'unit':
      return {
        ask: asked(w.whichUnit(question.column, question.samples)),
        of: 'column',
        column: question.column,
        choices: units.map((unit) => ({ name: unit, value: `${question.meaning} ${unit}` })),
      };
    case 'dates':
      return {
        ask: asked(w.whichDates(question.samples)),
        of: 'dates',
        choices: (['d/m/y', 'm/d/y'] as const).map((value) => ({ name: w.dates[value], value })),
      };
    case 'decimal':
      return {
        ask: asked(w.whichDecimal(question.samples)),
        of: 'decimal',
        choices: ([',', '.'] as const).map((value) => ({ name: w.decimal[value], value })),
      };
  }
};

export const bucketQuestion = (buckets: readonly BucketState[]): WireNotebookQuestion => ({
  ask: w.whichBucket,
  of: 'bucket',
  choices: buckets
    .filter(({ retired }) => !retired)
    .map(({ no, settings }) => ({ name: settings.name, value: String(no) })),
});

export const newBucketsQuestion: WireNotebookQuestion = {
  ask: w.newBuckets,
  of: 'newBuckets',
  choices: [{ name: w.yes, value: 'yes' }],
};
