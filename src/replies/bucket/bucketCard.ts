import { present } from '../../present.ts';
import { fact } from '../../contract/replyParts.ts';
import { definedOnly } from '../../definedOnly.ts';
import { dryContent, solidsVolumeFraction } from '../../glaze/slurry/slurry.ts';
import { isAccountBroken } from '../../studio/bucket/withVoid.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import { withoutFlagged } from '../../studio/bucket/withoutFlagged.ts';
import { decide } from '../../studio/verdict/decide.ts';
import { volumeHeld } from '../../studio/bucket/fold/foldBucket.ts';
import { usualRest } from '../../studio/bucket/rests.ts';
import { hours } from '../../studio/ids.ts';
import { restLearned } from '../../studio/verdict/restLearned.ts';
import { usualSolids } from '../../studio/settings/usualSolids.ts';
import type { Asking, Reply } from '../../contract/contract.ts';
import { isoInstant } from '../../studio/time/isoInstant.ts';
import { onceEach } from '../verdict/onceEach.ts';
import { accountOf } from '../verdict/unloggedReply.ts';
import { ageOf, hasMovedOn, uncounted } from '../verdict/verdictFacts.ts';

const settingsData = (
  { no, settings, hold }: BucketState,
  volumeL: number | null,
  rest: { limitHours: number } | undefined,
): Reply['data'] => {
  const { name, nick, pail, gravity, efflux, cup, solids, restLimit, shelfLife, mesh, use } = settings;
  const { recipe, cone, atmosphere, bodies, cautions } = settings;
  return definedOnly({
    number: no,
    name,
    nick,
    volumeL,
    pailL: pail === undefined ? undefined : pail / 1000,
    window: gravity ? { low: gravity.low, high: gravity.high } : null,
    efflux: efflux ? { low: efflux.low, high: efflux.high } : null,
    cup,
    solidsGravity: solids,
    restHours: restLimit / hours(1),
    restLearnedHours: rest?.limitHours,
    freshHours: shelfLife / hours(1),
    mesh,
    use,
    recipe,
    cone,
    atmosphere,
    bodies,
    cautions,
    hold: hold && { cause: hold.cause, why: hold.why, since: isoInstant(hold.since) },
  });
};

/** A bucket's card: what it is, what it contains, what it needs. */
export const bucketCard = async (state: BucketState, asking: Asking): Promise<Reply> => {
  const { words, now, role, book } = asking;
  const studio = await book.studio();
  const { units } = studio;
  const account = accountOf(state, { words, studio, now });
  const { settings } = state;
  const verdict = decide(state, { now, role, sure: studio.sure });
  // After an addition of unknown size, the powder per litre is unknown. A cake takes nothing out of the pail, so the
  // amounts still hold.
  const isKnown = state.unknownSince.length === 0 && !isAccountBroken(state);
  const gravity = isKnown ? withoutFlagged(state).predicted?.value : undefined;
  const slurry = gravity === undefined ? undefined : { slurry: gravity, particleGravity: settings.solids };
  const dry = slurry && dryContent(slurry);
  const phi = slurry && solidsVolumeFraction(slurry);
  const volume = volumeHeld(state)?.value;
  const w = words.bucket;
  return {
    kind: 'answer',
    title: words.verdict.headline(settings.name, words.verdict.title(verdict, studio)),
    facts: present([
      fact(w.factNumber, w.numberAndNick(state.no, settings.nick)),
      fact(w.factMadeFor, words.madeFor.all(settings)),
      settings.recipe !== undefined && fact(w.factRecipe, [{ said: settings.recipe }]),
      (settings.gravity || settings.efflux) &&
        fact(w.factWindow, w.windows(settings.gravity, settings.efflux, settings.cup)),
      volume !== undefined && fact(w.factVolume, w.holds(volume, settings.pail, units)),
      verdict.gravity && {
        label: [hasMovedOn(state) ? words.verdict.factLastReading : words.verdict.factGravity],
        text: verdict.gravity.believed
          ? [
              ...words.verdict.gravityFact(verdict.gravity.value, verdict.gravity.u95, null),
              ...ageOf(state.believed?.at, now, words),
            ]
          : uncounted(verdict.gravity.value, state, words),
      },
      fact(w.factPowder, w.powder(settings.solids, settings.solids === usualSolids)),
      dry?.ok && phi?.ok && !state.voided && fact(w.factDry, w.dry(dry.value, phi.value, units)),
      ...(restLearned(state).length === 0 && settings.restLimit !== usualRest
        ? [fact(w.factRest, w.restSet(settings.restLimit / hours(1)))]
        : restLearned(state).map((rest) => fact(w.factRest, words.verdict.rest(rest)))),
      ...account.facts,
    ]),
    reasons: account.reasons,
    cautions: onceEach([...settings.cautions.map(w.caution), ...verdict.cautions.map(words.verdict.caution)]),
    data: {
      bucket: settingsData(state, volume === undefined ? null : volume / 1000, restLearned(state)[0]),
      dryGramsPerLitre: dry?.ok ? dry.value : null,
      solidsVolumeFraction: phi?.ok ? phi.value : null,
      step: verdict.step,
      retired: state.retired,
      ...account.data,
      flocculantGrams: state.flocculant.heptahydrate,
      after: state.seq,
    },
  };
};
