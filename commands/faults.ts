import { asks, optional, type Reply } from '../src/contract/contract.ts';
import { faultsReply } from '../src/replies/firing/faultsReply.ts';
import { bucket } from '../src/contract/kinds/bucket.ts';
import { number } from '../src/contract/kinds/quantities.ts';
import { compareFaults } from '../src/studio/firing/compareFaults.ts';
import { dipsOf } from '../src/studio/logbook/dipsOf.ts';
import { days, later } from '../src/studio/ids.ts';

export const faults = asks({
  name: 'faults',
  about: (w) => w.fault.about,
  who: 'keeper',
  slow: true,
  aside: true,
  options: {
    bucket: optional(bucket, (w) => w.fault.bucket),
    days: optional(number(1, 3660, '90'), (w) => w.fault.days),
  },
  async run(v, { words, book, now }): Promise<Reply> {
    const { zone } = await book.studio();
    const results = (await book.fired()).filter(
      ({ said }) => !v.bucket || said.bucket === v.bucket.no || said.over === v.bucket.no,
    );
    const from = v.days === undefined ? undefined : later(now, days(-v.days));
    const dips = (await dipsOf(results, book)).filter(
      ({ dipped, result }) => from === undefined || (dipped?.from ?? result.at) >= from,
    );
    const names = new Map((await book.buckets()).map(({ no, settings }) => [no, settings.name]));
    return faultsReply(dips, compareFaults(dips, zone), names, words);
  },
});
