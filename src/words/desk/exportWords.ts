import { ours, t, type Text } from '../text/text.ts';

const size = (bytes: number): string =>
  bytes < 1e6 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1e6).toFixed(1)} MB`;

export const exportWords = {
  about: 'Take the studio’s data out, in an open format',
  as: 'json: all there is; csv: readings and what was done, for a spreadsheet',
  bucket: 'One bucket only',
  days: 'The last so many days only',
  done: (entries: number, bytes: number): Text =>
    t`${entries} ${[entries === 1 ? 'entry' : 'entries']}, ${[size(bytes)]}. Names and notes are in it: keep it as you would the logbook.`,
  json: ours(
    'Masses are grams, volumes millilitres, lengths millimetres, spans milliseconds. Passwords and codes are not in it.',
  ),
  csv: ours(
    'Times are UTC. Typed text that a spreadsheet would take for a formula has an apostrophe before it. Only json holds everything.',
  ),
  tooBig: (bytes: number, line: string): Text =>
    t`That is more than ${[size(bytes)]}, too big to hand over here. Narrow it with days: or bucket:, or on the studio’s own machine run: ${[line]}`,
  usage: 'usage: npm run -s export -- --out FILE [--as json|csv] [--bucket NAME] [--days N] [--studio ID]',
  wrote: (file: string, entries: number, bytes: number) =>
    `${file}: ${entries} ${entries === 1 ? 'entry' : 'entries'}, ${size(bytes)}.`,
  noBucket: (typed: string) => `there is no bucket "${typed}"`,
  whichBucket: (typed: string) => `"${typed}" fits several buckets; give its number`,
  noSuchDays: (typed: string) => `--days wants a number of days, not "${typed}"`,
  empty: (file: string) => `there is no studio in ${file} yet`,
  noFolder: (file: string) => `there is no folder for ${file}; make it first`,
  exists: (file: string) => `there is a file ${file} already`,
};
