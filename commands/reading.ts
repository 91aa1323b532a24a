import { definedOnly } from '../src/definedOnly.ts';
import type { BucketEntry, CupTime } from '../src/studio/bucket/bucketEvent.ts';
import { kinematicViscosityFromCup } from '../src/glaze/flow/flowCup.ts';
import { viscosityAt20 } from '../src/glaze/flow/temperatureCorrection.ts';
import { logs, optional, refusal, toRun, type Action, type Logging } from '../src/contract/contract.ts';
import { entryStamp } from '../src/contract/entryStamp.ts';
import { level } from '../src/contract/kinds/level.ts';
import { flowLook, pick, observationsSeen, yesNo } from '../src/contract/kinds/picks.ts';
import { effluxTime, length, number, readOffGravity, temperature } from '../src/contract/kinds/quantities.ts';
import { cup, entry as entryKind, scaleWeight, vessel } from '../src/contract/kinds/studioThings.ts';
import { isoInstant } from '../src/studio/time/isoInstant.ts';
import { printLine } from '../src/contract/parseLine.ts';
import { bucketOption, whenAndNote } from '../src/contract/kinds/usualOptions.ts';
import { withHazardNoted } from '../src/replies/bucket/hazardNoted.ts';
import { askAgain, readingReplaced } from '../src/replies/bucket/insteadOf.ts';
import { howFull } from '../src/replies/bucket/howFull.ts';
import { readGravity } from '../src/replies/bucket/readGravity.ts';
import { sightsSeen } from '../src/replies/bucket/sightsSeen.ts';
import { verdictReply } from '../src/replies/verdict/verdictReply.ts';
import { barehanded } from '../src/studio/settings/barehanded.ts';
import { cupFor } from '../src/studio/settings/cupFor.ts';
import type { BucketState } from '../src/studio/bucket/bucketState.ts';
import { volumeHeld } from '../src/studio/bucket/fold/foldBucket.ts';
import { gravityScales } from '../src/studio/measure/stateGravity.ts';
import { looksThick } from '../src/studio/verdict/flowBand.ts';
import { choiceWords } from '../src/words/desk/choiceWords.ts';

const measured = ['weight', 'gravity', 'seconds', 'gap', 'level', 'temperature'] as const;
const tellsSomething = [...measured, 'look', 'seen', 'stirred', 'note'] as const;

/** The reading is logged and does not count, and only because nobody said whether the bucket was stirred. */
const hangsOnStir = (
  { cake, hold, retired, unbelieved, restedFlow }: BucketState,
  { seq, at }: BucketEntry,
): boolean =>
  cake === undefined && hold === undefined && !retired && (unbelieved?.seq === seq || restedFlow?.at === at);

/** The same reading at the same moment, with the missing answer. Its note is logged already, so it is left out. */
const saysStirred = (
  { no, seq }: BucketState,
  { at }: BucketEntry,
  { words, typed: { note: _note, when, ...typed } }: Logging,
): Action => {
  const moment = when === undefined ? {} : { when: isoInstant(at) };
  return toRun(
    words.verdict.itWasStirred,
    printLine(['reading'], { ...typed, ...moment, bucket: String(no), stirred: 'yes' }, seq),
  );
};

export const reading = logs({
  name: 'reading',
  about: (w) => w.reading.about,
  who: 'member',
  form: ['bucket', 'weight', 'seconds', 'look', 'stirred'],
  options: {
    bucket: bucketOption,
    weight: optional(scaleWeight, (w) => w.reading.weight),
    gravity: optional(readOffGravity, (w) => w.reading.gravity),
    seconds: optional(effluxTime, (w) => w.reading.seconds),
    look: optional(flowLook, (w) => w.reading.look),
    stirred: optional(yesNo, (w) => w.reading.stirred),
    seen: optional(observationsSeen, (w) => w.reading.seen),
    gap: optional(length(0, 1000, 'cm'), (w) => w.reading.gap),
    level: optional(level, (w) => w.reading.level),
    temperature: optional(temperature(-5, 60), (w) => w.reading.temperature),
    vessel: optional(vessel, (w) => w.reading.vessel),
    weighed: optional(
      pick(
        ['with-cup', 'without-cup'],
        { gross: 'with-cup', net: 'without-cup', with: 'with-cup', without: 'without-cup' },
        choiceWords.weighed,
      ),
      (w) => w.reading.weighed,
    ),
    scale: optional(
      pick(
        gravityScales,
        { be: 'baume', bé: 'baume', tw: 'twaddell', 'baume-145': 'baume', 'baume-144-3': 'baume-144' },
        choiceWords.scale,
      ),
      (w) => w.reading.scale,
    ),
    within: optional(number(0.0005, 0.5, '0.01'), (w) => w.reading.within),
    cup: optional(cup, (w) => w.reading.cup),
    instead: optional(entryKind, (w) => w.reading.instead),
    ...whenAndNote,
  },
  async run(v, context) {
    const { words, book } = context;
    const stamp = entryStamp(context, v);
    const w = words.reading;
    if (tellsSomething.every((name) => v[name] === undefined)) return refusal(w.nothing);
    const studio = await book.studio();
    const known = cupFor(v.cup, v.bucket.settings.cup, studio.cups);
    const flow: CupTime | undefined =
      v.seconds === undefined ? undefined : { cup: known.name, kind: known.kind, seconds: v.seconds };
    const thick = looksThick(v.bucket, definedOnly({ flow, look: v.look }), stamp.at);
    const found = readGravity(v, { studio, thick, words, at: stamp.at, typed: context.typed });
    if (found.kind === 'reply') return found.reply;
    if (v.look !== undefined && !barehanded(v.bucket.settings)) return refusal(w.noFinger);
    const filled = howFull(v, studio.units, words);
    if (filled.kind === 'refused') return filled.reply;
    const replaced = await readingReplaced(v.instead, context);
    if (replaced.kind === 'refused') return replaced.reply;
    const event = {
      kind: 'reading' as const,
      ...(found.kind === 'gravity' && { gravity: found.gravity }),
      ...definedOnly({
        flow,
        look: v.look,
        gap: filled.gap,
        level: filled.level,
        temperature: v.temperature,
        stirred: v.stirred,
      }),
      seen: v.seen ?? [],
    };
    const logged = await book.log(v.bucket.no, event, stamp);
    const { entry } = logged;
    const left = replaced.kind === 'reading' ? await replaced.takeBack() : undefined;
    const state = left?.no === v.bucket.no ? left : logged.state;
    const viscosity =
      flow && flow.kind !== 'own' && flow.seconds !== 'wont-run'
        ? kinematicViscosityFromCup(flow.kind, flow.seconds)
        : undefined;
    const warmed =
      viscosity?.ok && v.temperature !== undefined && !thick
        ? viscosityAt20({ viscosity: viscosity.value, temperature: v.temperature })
        : undefined;
    const held = volumeHeld(state);
    const gravity = found.kind === 'gravity' ? found.gravity : undefined;
    const sights = sightsSeen(v.seen ?? [], context);
    const asked = await askAgain(
      found,
      { entry, event, before: v.bucket, after: state, isReplaced: left !== undefined },
      context,
    );
    const reply = await verdictReply(state, context, {
      entry,
      before: v.bucket,
      ...sights,
      actions: [...asked.actions, ...(sights.actions ?? [])],
      ...(v.stirred === undefined &&
        hangsOnStir(state, entry) && { stirUnsaid: saysStirred(state, entry, context) }),
      reasons: [
        ...asked.reasons,
        ...(found.kind === 'gravity' ? found.reasons : []),
        ...(viscosity?.ok ? [w.viscosity(viscosity.value, warmed?.ok ? warmed.value : undefined)] : []),
      ],
      data: {
        gravity: gravity ? gravity.value : null,
        u95: gravity ? gravity.u95 : null,
        ...(viscosity?.ok && { kinematicViscosity: viscosity.value }),
        ...(warmed?.ok && { kinematicViscosityAt20: warmed.value }),
        ...(held && { volumeL: held.value / 1000 }),
        ...(replaced.kind === 'reading' && { undone: replaced.entry.id }),
      },
    });
    return withHazardNoted(reply, state, v.note, context);
  },
});
