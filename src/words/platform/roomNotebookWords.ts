import { someOf } from '../text/someOf.ts';

const quoted = (cells: readonly string[]) => cells.map((cell) => `“${cell}”`).join(', ');

/** What a keeper reads who brings an old notebook in on the room's page. */
export const roomNotebookWords = {
  name: 'The notebook',
  archive:
    'That is a zip archive, perhaps a spreadsheet program’s own file. Save it there as CSV, and pick that.',
  binary: (line: number) => `That is not text: line ${line} has a character that no text has.`,
  tooBig: 'That is larger than half a megabyte. Split it into parts.',
  tooMany: (lines: number, most: number) =>
    `It has ${lines} lines, and ${most} are the most at once. Split it into parts.`,
  noZone: 'The studio’s time zone is not set, so no time in a notebook can be read. Set it first.',

  whichMeaning: (column: string, samples: readonly string[]) =>
    `What does the column “${column}” hold? For instance ${quoted(samples)}.`,
  whichUnit: (column: string, samples: readonly string[]) =>
    `In which unit are the numbers of “${column}”? For instance ${quoted(samples)}.`,
  whichDates: (samples: readonly string[]) =>
    `Which stands first in a date, the day or the month? For instance ${quoted(samples)}.`,
  whichDecimal: (samples: readonly string[]) => `What is the mark in ${quoted(samples)}?`,
  whichBucket: 'No column names the bucket. Which bucket is it all about?',
  newBuckets: 'Some buckets are not there. Shall they be made?',
  yes: 'Make them',
  dates: { 'd/m/y': 'the day', 'm/d/y': 'the month' },
  decimal: { ',': 'a decimal comma', '.': 'a decimal point' },
  meanings: {
    date: 'the date',
    time: 'the time of day',
    bucket: 'the bucket',
    who: 'who did it',
    gravity: 'specific gravity',
    scale: 'the scale of the gravity',
    weight: 'weight of the full cup',
    vessel: 'which weighing cup',
    seconds: 'seconds of the flow cup',
    cup: 'which flow cup',
    look: 'how it looks: thin, right or thick',
    gap: 'from the rim down to the glaze',
    temperature: 'temperature',
    seen: 'what was seen in it',
    stirred: 'whether it was stirred',
    minutes: 'how long it was stirred',
    sieved: 'whether it was sieved',
    mesh: 'the mesh of the sieve',
    water: 'water that went in',
    'draw-off': 'clear water that came off',
    dry: 'dry powder that went in',
    flocculant: 'flocculant that went in',
    deflocculant: 'deflocculant that went in',
    what: 'what went in',
    amount: 'how much went in',
    sure: 'whether an unusual amount is right',
    note: 'a note',
    ignore: 'nothing: leave it out',
  },

  noBucket: (typed: string) => (typed === '' ? 'it names no bucket' : `there is no bucket “${typed}”`),
  newBucket: (name: string, isIn: boolean) => `${name} ${isIn ? 'is' : 'will be'} a new bucket.`,
  newMember: (name: string, isIn: boolean) => `${name} ${isIn ? 'is' : 'will be'} a new member.`,
  zone: (zone: string) => `Times are read in ${zone.replaceAll('_', ' ')}.`,
  hazard: (line: number, bucket: string, marks: readonly string[]) =>
    `Line ${line}: the note names ${marks.join(', ')}, which ${bucket} is not marked with. If it is in the bucket, mark it, and let nobody use it before that.`,
  ready: (lines: number, known: number) =>
    `${someOf(lines - known, 'line', 'lines')} can be brought in.${known > 0 ? ` ${someOf(known, 'line is', 'lines are')} in the logbook already.` : ''} Nothing is logged yet.`,
  allKnown: 'All of it is in the logbook already. There is nothing to bring in.',
  refused: (refused: number, lines: number) =>
    `${someOf(refused, 'line', 'lines')} of ${lines} can’t be read, so nothing is brought in. Correct ${refused === 1 ? 'it' : 'them'} in the file, or take ${refused === 1 ? 'it' : 'them'} out.`,
  asks: 'Some of it can be read in two ways. Say which, and look again.',
  brought: (lines: number) => `${someOf(lines, 'line is', 'lines are')} in the logbook now.`,
  undone: (entries: number) =>
    `All of it is taken back: ${someOf(entries, 'entry', 'entries')}. The log shows them and that they were taken back.`,
  notUndone: 'That was taken back already.',
};
