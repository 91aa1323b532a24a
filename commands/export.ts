import { definedOnly } from '../src/definedOnly.ts';
import { asks, optional, refusal } from '../src/contract/contract.ts';
import { exportCsv } from '../src/replies/export/exportCsv.ts';
import { exportJson } from '../src/replies/export/exportJson.ts';
import { exportFormat } from '../src/studio/logbook/exportFormat.ts';
import { isoInstant } from '../src/studio/time/isoInstant.ts';
import { bucket } from '../src/contract/kinds/bucket.ts';
import { pick } from '../src/contract/kinds/picks.ts';
import { number } from '../src/contract/kinds/quantities.ts';
import { days, instant } from '../src/studio/ids.ts';

/** Every platform accepts a file of this size. */
const mostBytes = 8_000_000;
const encoder = new TextEncoder();

const operatorLine = (as: string): string => `npm run -s export -- --as ${as} --out export.${as}`;

export const exportData = asks({
  name: 'export',
  about: (w) => w.export.about,
  who: 'keeper',
  slow: true,
  aside: true,
  options: {
    as: optional(pick(['json', 'csv']), (w) => w.export.as),
    bucket: optional(bucket, (w) => w.export.bucket),
    days: optional(number(1, 36_600, '30'), (w) => w.export.days),
  },
  async run(v, { words, book, now }) {
    const w = words.export;
    const as = v.as ?? 'json';
    const since = v.days === undefined ? undefined : instant(now - days(v.days));
    const scope = definedOnly({ bucket: v.bucket?.no, since });
    const parts = as === 'json' ? exportJson(book, now, scope) : exportCsv(book, scope, words.someone);
    const texts: string[] = [];
    const total = { entries: 0, bytes: 0 };
    for await (const { text, entries } of parts) {
      texts.push(text);
      total.entries += entries;
      total.bytes += encoder.encode(text).length;
      if (total.bytes > mostBytes) return refusal(w.tooBig(mostBytes, operatorLine(as)), { mostBytes });
    }
    return {
      kind: 'answer',
      title: w.done(total.entries, total.bytes),
      reasons: [as === 'json' ? w.json : w.csv],
      fleeting: true,
      file: {
        name: `glaze-room-${isoInstant(now).slice(0, 10)}.${as}`,
        type: as === 'json' ? 'application/json' : 'text/csv',
        content: texts.join(''),
      },
      data: { as, ...total, ...(as === 'json' && { format: exportFormat }) },
    };
  },
});
