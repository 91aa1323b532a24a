import { definedOnly } from '../src/definedOnly.ts';
import { logs, optional, refusal } from '../src/contract/contract.ts';
import { entryStamp } from '../src/contract/entryStamp.ts';
import { flowLook, pick, observationsSeen } from '../src/contract/kinds/picks.ts';
import { stirMinutes } from '../src/contract/kinds/quantities.ts';
import { bucketOption, whenAndNote } from '../src/contract/kinds/usualOptions.ts';
import { barehanded } from '../src/studio/settings/barehanded.ts';
import { withHazardNoted } from '../src/replies/bucket/hazardNoted.ts';
import { sightsSeen } from '../src/replies/bucket/sightsSeen.ts';
import { verdictReply } from '../src/replies/verdict/verdictReply.ts';
import { stirTools } from '../src/studio/bucket/bucketEvent.ts';

export const stirred = logs({
  name: 'stirred',
  about: (w) => w.stirred.about,
  who: 'member',
  options: {
    bucket: bucketOption,
    minutes: optional(stirMinutes, (w) => w.stirred.minutes),
    with: optional(
      pick(stirTools, {
        drill: 'mixer',
        'power-mixer': 'mixer',
        machine: 'mixer',
        paddle: 'hand',
        stick: 'hand',
      }),
      (w) => w.stirred.with,
    ),
    look: optional(flowLook, (w) => w.stirred.look),
    seen: optional(observationsSeen, (w) => w.reading.seen),
    ...whenAndNote,
  },
  async run(v, context) {
    const { words, book } = context;
    if (v.look !== undefined && !barehanded(v.bucket.settings)) return refusal(words.reading.noFinger);
    const { state, entry } = await book.log(
      v.bucket.no,
      {
        kind: 'stir',
        ...definedOnly({ minutes: v.minutes, tool: v.with, look: v.look }),
        seen: v.seen ?? [],
      },
      entryStamp(context, v),
    );
    const sights = sightsSeen(v.seen ?? [], context);
    const reply = await verdictReply(state, context, {
      entry,
      cautions: [...sights.cautions, ...(v.with === 'mixer' ? [words.verdict.caution('mixer')] : [])],
      actions: sights.actions,
    });
    return withHazardNoted(reply, state, v.note, context);
  },
});
