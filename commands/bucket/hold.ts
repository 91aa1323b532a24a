import { logs, needed, optional, refusal, type Logging } from '../../src/contract/contract.ts';
import { pressToRun } from '../../src/contract/replyParts.ts';
import { pick, yesNo } from '../../src/contract/kinds/picks.ts';
import { poisonIn } from '../../src/studio/bucket/bucketHazards.ts';
import { text } from '../../src/contract/kinds/texts.ts';
import { stampNow } from '../../src/contract/entryStamp.ts';
import { bucketOption, noteOption } from '../../src/contract/kinds/usualOptions.ts';
import { verdictReply } from '../../src/replies/verdict/verdictReply.ts';
import { holdCauses, type BucketEvent, type HoldCause } from '../../src/studio/bucket/bucketEvent.ts';
import type { BucketState } from '../../src/studio/bucket/bucketState.ts';

const logHold = async (
  { no }: BucketState,
  event: BucketEvent,
  said: string | undefined,
  context: Logging,
) => {
  const { state, entry } = await context.book.log(no, event, stampNow(context, said));
  return verdictReply(state, context, { entry });
};

/** How people say what is wrong with a bucket; the first pattern that matches wins. */
const causePatterns: readonly [HoldCause, RegExp][] = [
  ['frozen', /\b(?:fro[sz]|freez|thaw|ic[ey]\b)/i],
  ['hazard', /\b(?:hazard|toxic|poison|lead\b|cadmium)/i],
  ['contaminated', /\b(?:contamina|pollut|dirt|mou?ld|(?:fell|got) in\b)/i],
];
const causeIn = (why: string): HoldCause => causePatterns.find(([, said]) => said.test(why))?.[0] ?? 'other';

export const holdBucket = logs({
  name: 'hold',
  about: (w) => w.bucket.hold,
  who: 'keeper',
  options: {
    bucket: bucketOption,
    why: needed(text(200, 'tested badly'), (w) => w.bucket.why),
    cause: optional(pick(holdCauses), (w) => w.bucket.cause),
    note: noteOption,
  },
  async run(v, context) {
    return logHold(v.bucket, { kind: 'hold', cause: v.cause ?? causeIn(v.why), why: v.why }, v.note, context);
  },
});

export const releaseBucket = logs({
  name: 'release',
  about: (w) => w.bucket.release,
  who: 'keeper',
  options: { bucket: bucketOption, sure: optional(yesNo, (w) => w.bucket.sureRelease), note: noteOption },
  async run(v, context) {
    const { words, typed } = context;
    const { hold, settings } = v.bucket;
    if (!hold) return refusal(words.bucket.notHeld(settings.name));
    const poison =
      poisonIn(settings.cautions) ?? (hold.cause === 'hazard' ? words.bucket.anyHazard : undefined);
    if (poison !== undefined && v.sure !== true)
      return {
        kind: 'choice',
        title: words.bucket.releasePoison(settings.name, poison),
        private: true,
        actions: [pressToRun(words.bucket.releaseSure, 'bucket release', { ...typed, sure: 'yes' })],
        data: { option: 'sure', choices: [{ label: 'yes', value: 'yes' }] },
      };
    return logHold(v.bucket, { kind: 'release' }, v.note, context);
  },
});

export const retireBucket = logs({
  name: 'retire',
  about: (w) => w.bucket.retire,
  who: 'keeper',
  options: { bucket: bucketOption, note: noteOption },
  async run(v, context) {
    if (v.bucket.retired) return refusal(context.words.bucket.alreadyRetired(v.bucket.settings.name));
    return logHold(v.bucket, { kind: 'retire' }, v.note, context);
  },
});
