import { present } from '../../present.ts';
import { definedOnly } from '../../definedOnly.ts';
import type { Label, LabelLead } from '../../contract/labelSheet.ts';
import type { Asking } from '../../contract/contract.ts';
import { plainText } from '../../contract/plainText.ts';
import { printLine } from '../../contract/parseLine.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { gravityText } from '../../words/text/measures.ts';
import { capital } from '../../words/text/capital.ts';
import type { Text } from '../../words/text/text.ts';

/** What stands on a bucket's lid: what does not change from day to day. */
export const bucketLabel = (
  { no, settings }: BucketState,
  { room, warnings, zone }: { room: string | undefined; warnings: readonly Text[]; zone: string },
  { words, now }: Asking,
): Label => {
  const { name, nick, gravity, efflux, cup, use, bodies, recipe, cautions } = settings;
  const w = words.label;
  const plain = (text: Text) => plainText(text, { now, zone });
  const fires = words.madeFor.fires(settings);
  const lead: LabelLead =
    room === undefined
      ? { kind: 'line', caption: w.type, line: printLine(['reading'], { bucket: String(no) }) }
      : { kind: 'code', caption: w.scan, url: `${room}/bucket/${no}` };
  return {
    no,
    name: plain([{ said: name }]),
    ...(nick !== undefined && { nick: plain([{ said: nick }]) }),
    ...(gravity && {
      window: {
        label: w.gravity,
        low: gravity.low,
        high: gravity.high,
        lowText: gravityText(gravity.low),
        highText: gravityText(gravity.high),
      },
    }),
    ...definedOnly({ seconds: efflux && plain(w.seconds(efflux, cup)) }),
    lines: present([
      fires && `${capital(plain(fires))}.`,
      plain(w.madeFor(words.madeFor.use(use))),
      bodies !== undefined && plain(w.goesOn(bodies)),
      recipe !== undefined && plain(w.recipe(recipe)),
    ]),
    cautions: present([
      ...warnings,
      use === 'spraying' && words.verdict.caution('spray'),
      ...cautions.map(words.bucket.caution),
    ]).map(plain),
    lead,
  };
};
