/** What the page says of an old notebook. It imports nothing: the browser loads it as it is. */
export const notebookPageWords = {
  title: 'Bring a notebook in',
  about: 'Old readings from a table, as CSV',
  lead: 'Pick a CSV file, or paste its lines. The first line names the columns. You see what each line would become before anything is logged.',
  file: 'The file',
  paste: 'Or paste it here',
  example: 'date,bucket,gravity,seconds\n2026-03-01,Gull Grey,1.45,14',
  look: 'See what it becomes',
  again: 'Look again',
  keep: 'Bring it in',
  undo: 'Take all of it back',
  working: 'Reading it …',
  empty: 'Pick a file, or paste some lines.',
  tooBig: 'That is larger than half a megabyte. Split it into parts.',
  failed:
    'The room does not answer, so I don’t know whether anything was logged. Look again before you bring it in.',
  refused: 'Lines that can’t be read',
  becomes: 'What the lines become',
  more: (count: number) => `… and ${count} more`,
  pick: 'Choose one',
};
