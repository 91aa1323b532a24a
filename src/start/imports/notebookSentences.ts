import { meanings } from '../../notebook/meanings.ts';
import type { ColumnsProblem, Question } from '../../notebook/notebookSettings.ts';
import type { TableProblem } from '../../notebook/readTable.ts';
import type { LineProblem } from '../../notebook/takeNotebookIn.ts';
import { notebookWords as w } from '../../words/platform/notebookWords.ts';

export const tableSentence = (why: TableProblem, file: string): string => {
  switch (why.kind) {
    case 'empty':
      return w.empty(file);
    case 'long-line':
      return w.longLine(why.line, why.most);
    case 'many-columns':
      return w.manyColumns(why.line, why.columns, why.most);
    case 'many-lines':
      return w.manyLines(why.most);
    case 'open-quote':
      return w.openQuote(why.line);
  }
};

export const columnsSentence = (problem: ColumnsProblem): string => {
  switch (problem.kind) {
    case 'no-column':
      return w.noColumn(problem.column, problem.header);
    case 'no-meaning':
      return w.noMeaning(problem.column, problem.typed, meanings);
    case 'twice':
      return w.twice(problem.meaning, problem.columns);
    case 'no-header':
      return w.noHeader(problem.header);
    case 'none-means':
      return problem.meaning === 'date' ? w.noDate(problem.header) : w.noBucketColumn(problem.header);
  }
};

/** The question, and how to answer it on the command line. */
export const questionSentences = (question: Question): [ask: string, say: string] => {
  switch (question.kind) {
    case 'meaning':
      return [w.whichMeaning(question.column, question.samples, meanings), w.sayMeaning(question.column)];
    case 'unit':
      return [w.whichUnit(question.column, question.samples), w.sayUnit(question.column, question.meaning)];
    case 'dates':
      return [w.whichDates(question.samples), w.sayDates];
    case 'decimal':
      return [w.whichDecimal(question.samples), w.sayDecimal];
  }
};

export const lineSentence = (why: LineProblem): string => {
  if (typeof why === 'string') return w.no[why];
  switch (why.kind) {
    case 'cells':
      return w.cells(why.found, why.wanted);
    case 'no-bucket':
      return w.noBucket(why.typed);
    case 'which-bucket':
      return w.whichBucket(why.typed);
    case 'which-member':
      return w.whichMember(why.typed);
    case 'yes-or-no':
      return w.yesOrNo(why.typed);
    case 'answer':
      return why.text;
  }
};
