import type { Window } from '../../studio/settings/bucketSettings.ts';
import { listed } from '../text/listed.ts';
import { secondsWindowText } from '../text/measures.ts';
import { someOf } from '../text/someOf.ts';
import { said, t, type Text } from '../text/text.ts';
import type { Instant } from '../../studio/ids.ts';

/** Labels for lids: what is printed on them, and what is said with the sheet. */
export const labelWords = {
  about: 'A sheet of labels to print for the lids',
  paper: 'The paper in the printer',
  paperNames: { a4: 'A4', letter: 'US Letter' },
  buckets: 'Which buckets, with commas between; all in use if left out',
  code: 'Print a code to scan on each label; without it, a line to type is printed',
  none: t`There are no buckets in use, so there is nothing to print. A keeper sets one up first.`,
  noneNamed: (typed: string): Text => t`“${said(typed)}” names no bucket. Type them like: gg, 4, kelp rope.`,
  /** What the codes would open. */
  loopback: (url: string): Text =>
    t`The codes would open ${[url]}, which only this computer can open. Start the room with npm start -- --lan, or set ROOM_URL in .env to the address that phones open. Nothing was printed.`,
  withoutCodes: t`Print a line to type instead`,
  title: (labels: number, pages: number, paper: string): Text =>
    t`${[someOf(labels, 'label', 'labels')]} on ${[someOf(pages, 'page', 'pages')]} of ${[paper]}, to print.`,
  howTo: t`Print it at full size, cut along the dotted lines, and cover each label with clear tape: a wet lid takes ink off.`,
  opens: (url: string): Text => t`A code opens the room at ${[url]}, at its bucket, ready for a reading.`,
  mayChange: (url: string): Text =>
    t`${[url]} is an address of this network, and it may change. Then the codes no longer work. Give this computer a fixed address in the router, or set ROOM_URL, and print the labels again when it changes.`,
  reprint: t`A printed label does not change with its bucket: print a new one when a window, a mark or the name changes.`,
  unprinted: (rows: readonly { no: number; characters: readonly string[] }[]): Text =>
    t`The sheet’s letters do not include ${said(
      listed(rows.map(({ no, characters }) => `${characters.join(' ')} (bucket ${no})`)),
    )}, so a box is printed there. Write it in by hand.`,
  sheetTitle: (studio: string | undefined): string =>
    studio === undefined ? 'Bucket labels' : `Bucket labels of ${studio}`,
  foot: (studio: string | undefined): Text =>
    studio === undefined ? t`Bucket labels.` : t`Bucket labels of ${said(studio)}.`,
  footMayChange: (url: string): Text =>
    t`The codes lead to ${[url]}. That address may change; then print these labels again.`,
  printedOn: (now: Instant): Text => t`Printed ${{ at: now, show: 'day' }}`,
  boxNote: 'A box marks a letter that could not be printed.',
  gravity: 'Gravity',
  scan: 'Scan it to log a reading.',
  type: 'To log a reading, type',
  seconds: (window: Window<number>, cup: string | undefined): Text =>
    cup === undefined ? [secondsWindowText(window)] : t`${[secondsWindowText(window)]} by ${said(cup)}`,
  madeFor: (use: Text): Text => t`For ${use}.`,
  goesOn: (bodies: string): Text => t`On ${said(bodies)}.`,
  recipe: (recipe: string): Text => t`Recipe: ${said(recipe)}.`,
};
