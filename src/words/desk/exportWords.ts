import { someOf } from '../text/someOf.ts';
import { t, type Text } from '../text/text.ts';

const size = (bytes: number): string =>
  bytes < 1e6 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;

export const exportWords = {
  about: 'Get the studio’s data as a file in an open format',
  as: 'Format: json holds everything, csv opens in a spreadsheet',
  bucket: 'Only this bucket',
  days: 'Only this many days back',
  done: (entries: number, bytes: number): Text =>
    t`${[someOf(entries, 'entry', 'entries')]}, ${[size(bytes)]}. It contains names and notes: keep it as carefully as the logbook.`,
  json: t`Weights are in grams, volumes in millilitres, lengths in millimetres, durations in milliseconds. Passwords and codes are left out.`,
  csv: t`Times are UTC. An apostrophe stands before typed text that a spreadsheet would run as a formula. Only json holds everything.`,
  tooBig: (bytes: number, line: string): Text =>
    t`That is more than ${[size(bytes)]}, too big to send here. Ask for less with days: or bucket:, or run this on the studio’s own machine: ${[line]}`,
  usage: 'usage: npm run -s export -- --out FILE [--as json|csv] [--bucket NAME] [--days N] [--studio ID]',
  wrote: (file: string, entries: number, bytes: number) =>
    `${file}: ${someOf(entries, 'entry', 'entries')}, ${size(bytes)}.`,
  noBucket: (typed: string) => `there is no bucket "${typed}"`,
  whichBucket: (typed: string) => `"${typed}" fits several buckets; give its number`,
  noSuchDays: (typed: string) => `--days wants a number of days, not "${typed}"`,
  empty: (file: string) => `there is no studio in ${file} yet`,
  noFolder: (file: string) => `there is no folder for ${file}; make it first`,
  exists: (file: string) => `there is a file ${file} already`,
};
