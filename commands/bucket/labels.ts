import { asks, optional, refusal } from '../../src/contract/contract.ts';
import { pressToRun } from '../../src/contract/replyParts.ts';
import { buckets } from '../../src/contract/kinds/bucket.ts';
import { pick, yesNo } from '../../src/contract/kinds/picks.ts';
import type { Paper } from '../../src/contract/labelSheet.ts';
import { plainText } from '../../src/contract/plainText.ts';
import { reachOf } from '../../src/contract/roomReach.ts';
import { unexplainedIn } from '../../src/replies/batch/derivedMarks.ts';
import { instant } from '../../src/studio/ids.ts';
import { bucketLabel } from '../../src/replies/bucket/bucketLabel.ts';
import { labelWords } from '../../src/words/bucket/labelWords.ts';

const paperKind = pick(
  ['a4', 'letter'],
  { 'us-letter': 'letter', 'din-a4': 'a4', us: 'letter' },
  labelWords.paperNames,
);

export const labelsOfBuckets = asks({
  name: 'labels',
  about: (w) => w.label.about,
  who: 'keeper',
  slow: true,
  aside: true,
  options: {
    paper: optional(paperKind, (w) => w.label.paper),
    buckets: optional(buckets, (w) => w.label.buckets),
    code: optional(yesNo, (w) => w.label.code),
  },
  async run(v, asking) {
    const { words, book, now, labels: port, studio: id, typed } = asking;
    if (!port) throw new Error('this desk has nothing to print labels with');
    const w = words.label;
    const { name, units, zone } = await book.studio();
    const chosen = v.buckets ?? (await book.buckets()).filter(({ retired }) => !retired);
    if (chosen.length === 0) return refusal(w.none);
    const room = v.code === false ? undefined : port.roomOf(id);
    const reach = room === undefined ? undefined : reachOf(room);
    if (room !== undefined && reach === 'machine')
      return {
        ...refusal(w.loopback(room), { room, reach }),
        actions: [pressToRun(w.withoutCodes, 'bucket labels', { ...typed, code: 'no' })],
      };
    const paper: Paper = v.paper ?? (units === 'us' ? 'letter' : 'a4');
    const labels = await Promise.all(
      chosen.map(async (state) =>
        bucketLabel(state, { room, zone, warnings: await unexplainedIn(state.settings, asking) }, asking),
      ),
    );
    const plain = (text: Parameters<typeof plainText>[0]) => plainText(text, { now, zone });
    const mayChange = room !== undefined && reach === 'network';
    const { file, pages, unprinted } = await port.print({
      paper,
      title: w.sheetTitle(name),
      // A label stays on its lid for years, so its date is printed with the year.
      printed: plainText(w.printedOn(now), { now: instant(0), zone }),
      foot: [w.foot(name), ...(mayChange ? [w.footMayChange(room)] : [])].map(plain).join(' '),
      boxNote: w.boxNote,
      labels,
    });
    return {
      kind: 'answer',
      title: w.title(labels.length, pages, w.paperNames[paper]),
      cautions: [
        ...(mayChange ? [w.mayChange(room)] : []),
        ...(unprinted.length > 0 ? [w.unprinted(unprinted)] : []),
      ],
      reasons: [w.howTo, ...(room === undefined ? [] : [w.opens(room)]), w.reprint],
      // Names that somebody may want forgotten cannot be taken out of a finished sheet.
      fleeting: true,
      file,
      data: {
        paper,
        pages,
        room: room ?? null,
        reach: reach ?? null,
        labels: labels.map(({ no, lead }) => ({
          bucket: no,
          ...(lead.kind === 'code' ? { url: lead.url } : { line: lead.line }),
        })),
        unprinted,
      },
    };
  },
});
