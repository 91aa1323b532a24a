import { agoText } from '../text/agoText.ts';
import { someOf } from '../text/someOf.ts';

const quoted = (cells: readonly string[]) => cells.map((cell) => `"${cell}"`).join(', ');
const columnsNamed = (header: readonly string[]) => quoted(header.filter((name) => name !== ''));

/** What an operator reads who brings a studio's old notebook in. */
export const notebookWords = {
  usage: [
    'usage: npm run -s import -- FILE.csv [--dry-run] [--columns "Date=date, SG=gravity, …"] [--bucket NAME]',
    '         [--new-buckets] [--dates d/m/y|m/d/y] [--decimal ,|.] [--separator ,|;|tab] [--encoding NAME]',
    '         [--as NAME] [--studio ID]',
    '       npm run -s import -- --undo N [--as NAME] [--studio ID]      takes a whole import back',
  ].join('\n'),
  nothingIn: 'Nothing was brought in.',
  archive: (file: string) =>
    `${file} is a zip archive, perhaps a spreadsheet program’s own file. Save it there as CSV first.`,
  binary: (file: string, line: number) =>
    `${file} is not text: line ${line} has a character that no text has. If it is one, say how it is encoded with --encoding.`,
  tooBig: (file: string, most: number) => `${file} is larger than ${most / 1e6} MB. Split it into parts.`,
  empty: (file: string) => `${file} has no lines.`,
  longLine: (line: number, most: number) =>
    `Line ${line} is longer than ${most} characters: this is no notebook.`,
  manyColumns: (line: number, columns: number, most: number) =>
    `Line ${line} has ${columns} columns, more than ${most}: this is no notebook.`,
  manyLines: (most: number) => `It has more than ${most} lines. Split it into parts.`,
  openQuote: (line: number) => `In line ${line} a quote opens and is not closed where the cell ends.`,

  badColumns: (typed: string) => `--columns wants "Date=date, SG=gravity, …", not "${typed}"`,
  notOneOf: (option: string, typed: string, all: readonly string[]) =>
    `--${option} wants ${all.join(' or ')}, not "${typed}"`,
  noColumn: (column: string, header: readonly string[]) =>
    `There is no column "${column}"; the first line names ${columnsNamed(header)}.`,
  noMeaning: (column: string, typed: string, all: readonly string[]) =>
    `The column "${column}" can’t mean "${typed}". It can mean ${all.join(', ')}; add a unit where its numbers have none, such as "water ml".`,
  twice: (meaning: string, [one, other]: readonly [string, string]) =>
    `"${one}" and "${other}" would both be ${meaning}. Set one of them to "ignore".`,
  noHeader: (header: readonly string[]) =>
    `The first line must name the columns, and there is a date in it: ${columnsNamed(header)}.`,
  noDate: (header: readonly string[]) =>
    `No column says the date. The first line names ${columnsNamed(header)}.`,
  noBucketColumn: (header: readonly string[]) =>
    `No column says the bucket. If all lines are about one, name it with --bucket. The first line names ${columnsNamed(header)}.`,

  whichMeaning: (column: string, samples: readonly string[], all: readonly string[]) =>
    `What does the column "${column}" mean (${quoted(samples)})? One of: ${all.join(', ')}.`,
  sayMeaning: (column: string) => `Say it with --columns "${column}=…", or "${column}=ignore".`,
  whichUnit: (column: string, samples: readonly string[]) =>
    `In which unit are the numbers of the column "${column}" (${quoted(samples)})? For instance ml, l, g, kg, oz.`,
  sayUnit: (column: string, meaning: string) =>
    `Say it with --columns "${column}=${meaning} ml", or what unit it is.`,
  whichDates: (samples: readonly string[]) =>
    `Which stands first in a date, the day or the month (${quoted(samples)})? d/m/y or m/d/y.`,
  sayDates: 'Say it with --dates d/m/y or --dates m/d/y.',
  whichDecimal: (samples: readonly string[]) =>
    `Is the mark in ${quoted(samples)} a decimal one, or does it group thousands? The decimal mark is , or . (a comma or a full stop).`,
  sayDecimal: 'Say it with --decimal , or --decimal . (a comma or a full stop).',

  no: {
    'no-date': 'its date can’t be read',
    'no-time': 'its time can’t be read',
    ahead: 'its time is still to come',
    nothing: 'it has a date and a bucket, and nothing else',
  },
  cells: (found: number, wanted: number) =>
    `it has ${found} cells, and the first line has ${wanted}: perhaps a comma in it should be in quotes`,
  noBucket: (typed: string) =>
    typed === '' ? 'it names no bucket' : `there is no bucket "${typed}"; --new-buckets makes it`,
  whichBucket: (typed: string) => `"${typed}" fits several buckets`,
  whichMember: (typed: string) => `several members are called "${typed}"`,
  yesOrNo: (typed: string) => `"${typed}" is neither yes nor no`,
  refusedLine: (line: number, why: string) => `Line ${line}: ${why}`,
  becomes: (line: number, bucket: string, what: readonly string[]) =>
    `Line ${line}, ${bucket}: ${what.join('; ')}`,
  andMore: (count: number) =>
    `… and ${someOf(count, 'more line', 'more lines')}. Send the output to a file to see all: … > lines.txt`,
  bucketLines: (typed: string, bucket: string, lines: number) =>
    `"${typed}" is ${bucket}: ${someOf(lines, 'line', 'lines')}.`,
  madeBucket: (name: string) => `${name} would be a new bucket.`,
  newMember: (name: string) => `${name} would be a new member.`,
  hazard: (line: number, bucket: string, marks: readonly string[]) =>
    `Line ${line}: the note names ${marks.join(', ')}, which ${bucket} is not marked with. If it is in the bucket, a keeper marks it with /bucket change, and nobody uses it before that.`,
  noZone:
    'The studio’s time zone is not set, so no time in a notebook can be read. Set it first, for instance: npm run -s say -- --keeper "/studio set zone:America/St_Johns"',
  zoneIs: (zone: string) => `Times are read in ${zone}.`,
  dryRun: (lines: number, known: number, refused: number) =>
    [
      `${someOf(lines, 'line', 'lines')}: ${lines - known - refused} would be brought in,`,
      `${known} ${known === 1 ? 'is' : 'are'} in the logbook already, ${refused} would be refused.`,
      'Nothing was brought in.',
    ].join(' '),
  refused: (refused: number, lines: number) =>
    `${someOf(refused, 'line', 'lines')} of ${lines} ${refused === 1 ? 'is' : 'are'} refused. Nothing was brought in. Correct them in the file, or take them out.`,
  brought: (lines: number, known: number, no: number | undefined) =>
    no === undefined
      ? `All ${someOf(lines, 'line is', 'lines are')} in the logbook already. Nothing was brought in.`
      : [
          `${someOf(lines - known, 'line is', 'lines are')} brought in, as import ${no}.`,
          ...(known > 0 ? [`${someOf(known, 'line was', 'lines were')} in the logbook already.`] : []),
          `To take it back as a whole: npm run -s import -- --undo ${no}`,
        ].join(' '),
  progress: (done: number, lines: number) => `\r${done} of ${lines} lines`,

  badUndo: (typed: string) => `--undo wants the number of an import, not "${typed}"`,
  undone: (no: number, entries: number) =>
    `Import ${no} is taken back: ${someOf(entries, 'entry', 'entries')}. The log shows them and that they were taken back.`,
  noImport: (
    no: number,
    known: readonly { no: number; at: number; entries: number; takenBack?: number | undefined }[],
    now: number,
  ) =>
    known.length === 0
      ? `There is no import ${no} to take back: nothing was brought in yet.`
      : [
          `There is no import ${no} to take back. There are:`,
          ...known.map(
            (one) =>
              `  ${one.no}, ${agoText((now - one.at) / 3_600_000)}: ${someOf(one.entries, 'entry', 'entries')}${one.takenBack === undefined ? '' : ', taken back'}`,
          ),
        ].join('\n'),
};
