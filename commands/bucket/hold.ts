import { logs, type Logging } from '../../src/contract/contract.ts';
import { bucket } from '../../src/contract/kinds/bucket.ts';
import { pick } from '../../src/contract/kinds/picks.ts';
import { note, text } from '../../src/contract/kinds/texts.ts';
import { verdictReply } from '../../src/replies/verdict/verdictReply.ts';
import { holdCauses, type BucketEvent, type HoldCause } from '../../src/studio/bucket/bucketEvent.ts';
import type { BucketState } from '../../src/studio/bucket/bucketState.ts';

const keep = async ({ no }: BucketState, event: BucketEvent, said: string | undefined, context: Logging) => {
  const { book, now, member } = context;
  const { state, entry } = await book.log(no, event, {
    at: now,
    loggedAt: now,
    by: member,
    ...(said !== undefined && { note: said }),
  });
  return verdictReply(state, context, { entry });
};

const which = { kind: bucket, needed: true, about: (w: Logging['words']) => w.reading.bucket } as const;
const noted = { kind: note, needed: false, about: (w: Logging['words']) => w.note } as const;

/** How people say what is wrong with a bucket; the first that fits. */
const spoken: readonly [HoldCause, RegExp][] = [
  ['frozen', /\b(?:fro[sz]|freez|thaw|ic[ey]\b)/i],
  ['hazard', /\b(?:hazard|toxic|poison|lead\b|cadmium)/i],
  ['contaminated', /\b(?:contamina|pollut|dirt|mou?ld|(?:fell|got) in\b)/i],
];
const causeIn = (why: string): HoldCause => spoken.find(([, said]) => said.test(why))?.[0] ?? 'other';

export const holdBucket = logs({
  name: 'hold',
  about: (w) => w.bucket.hold,
  who: 'keeper',
  options: {
    bucket: which,
    why: { kind: text(200, 'tested badly'), needed: true, about: (w) => w.bucket.why },
    cause: { kind: pick(holdCauses), needed: false, about: (w) => w.bucket.cause },
    note: noted,
  },
  async run(v, context) {
    return keep(v.bucket, { kind: 'hold', cause: v.cause ?? causeIn(v.why), why: v.why }, v.note, context);
  },
});

export const releaseBucket = logs({
  name: 'release',
  about: (w) => w.bucket.release,
  who: 'keeper',
  options: { bucket: which, note: noted },
  async run(v, context) {
    if (!v.bucket.hold)
      return { kind: 'refusal', title: context.words.bucket.notHeld(v.bucket.settings.name), data: {} };
    return keep(v.bucket, { kind: 'release' }, v.note, context);
  },
});

export const retireBucket = logs({
  name: 'retire',
  about: (w) => w.bucket.retire,
  who: 'keeper',
  options: { bucket: which, note: noted },
  async run(v, context) {
    if (v.bucket.retired)
      return {
        kind: 'refusal',
        title: context.words.bucket.alreadyRetired(v.bucket.settings.name),
        data: {},
      };
    return keep(v.bucket, { kind: 'retire' }, v.note, context);
  },
});
