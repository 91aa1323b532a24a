import { definedOnly } from '../src/definedOnly.ts';
import { epsomInSolution, epsomToSaturate } from '../src/glaze/materials/epsomSolution.ts';
import { householdVolumes } from '../src/glaze/materials/householdVolumes.ts';
import { grams, millilitres, type Celsius, type Millilitres } from '../src/glaze/units.ts';
import { asks, optional, refusal, type Asking, type Reply } from '../src/contract/contract.ts';
import { pressToRun } from '../src/contract/replyParts.ts';
import { bucket } from '../src/contract/kinds/bucket.ts';
import { pick } from '../src/contract/kinds/picks.ts';
import { temperature, volume } from '../src/contract/kinds/quantities.ts';
import { adviseDose, type DoseAdvice } from '../src/studio/verdict/adviseDose.ts';
import type { MemberId } from '../src/studio/ids.ts';
import type { BucketState } from '../src/studio/bucket/bucketState.ts';
import { decide } from '../src/studio/verdict/decide.ts';
import { gelsByItself } from '../src/studio/bucket/bucketHazards.ts';
import { verdictActions } from '../src/replies/verdict/verdictActions.ts';
import type { Dont, Reason } from '../src/studio/verdict/verdict.ts';
import { handDose } from '../src/words/text/doseText.ts';
import { isForDipping } from '../src/studio/verdict/judgedBy.ts';
import { roomTemperature, saltInSaturatedSolution } from '../src/studio/bucket/flocculantSolution.ts';

/** More crystals than dissolve, so that the solution stays saturated: common practice. */
const overSaturated = 1.25;

const solution = (water: Millilitres, at: Celsius, { words }: Asking): Reply => {
  const w = words.dose;
  const dissolves = epsomToSaturate({ water: grams(water), temperature: at });
  if (!dissolves.ok)
    return refusal(
      words.option.tooHigh(String(dissolves.outOfRange.value), String(dissolves.outOfRange.high)),
    );
  // Above 30 °C the density is not known, so no spoon measure is given.
  const spoon = epsomInSolution({ volume: householdVolumes['us-tsp'], temperature: at });
  const crystals = grams(Math.ceil((dissolves.value * overSaturated) / 10) * 10);
  return {
    kind: 'answer',
    title: w.solution(crystals, water),
    facts: [{ label: [w.factDissolves], text: w.dissolves(dissolves.value, at) }],
    reasons: [...w.solutionSteps, ...(spoon.ok ? [w.strength(spoon.value, at)] : [])],
    data: {
      ...(spoon.ok && { teaspoonGrams: spoon.value }),
      waterMl: water,
      heptahydrateGrams: dissolves.value,
      crystalsGrams: crystals,
      temperature: at,
    },
  };
};

const noLoosening: ReadonlySet<Reason['because']> = new Set([
  'gels-by-itself',
  'loosening-no-change',
  'loosening-checkpoint',
]);
const jarReasons: ReadonlySet<Reason['because']> = new Set(['jar-test', 'loosening-learned']);

/** A jar test of deflocculant, where the verdict asks for it, and why not where it does not. */
const deflocculant = async (state: BucketState, asking: Asking): Promise<Reply> => {
  const { words, role, now, book } = asking;
  const w = words.dose;
  if (role !== 'keeper') return refusal(w.keepersOnly);
  const studio = await book.studio();
  const verdict = decide(state, { now, role, sure: studio.sure });
  const { jarDrops, deflocculantMl, deflocculantMlPerLitre } = verdict.amounts;
  const why = verdict.reasons.find(({ because }) => noLoosening.has(because))?.because;
  const isAsked = jarDrops !== undefined || why !== undefined || verdict.then === 'deflocculate';
  const answer = words.verdict.title(verdict, studio);
  const dont: Dont[] = ['water-to-thin-a-gel'];
  if (gelsByItself(state.settings)) dont.push('loosen-a-borate-gel');
  const member = (id: MemberId) => ({ member: id, name: words.someone });
  const toSay = verdict.reasons.filter(({ because }) => jarReasons.has(because) || because === why);
  return {
    kind: 'answer',
    title: words.verdict.headline(state.settings.name, isAsked ? answer : w.deflocculantNotAsked(answer)),
    cautions: [words.verdict.caution('deflocculant')],
    dont: dont.map(words.verdict.dont),
    reasons: [
      ...toSay.map((reason) => words.verdict.reason(reason, { measures: studio, member })),
      w.tooMuchLoosened,
      w.product(studio.deflocculant),
    ],
    actions: verdictActions(verdict, state.settings, asking, studio).slice(0, 3),
    data: {
      what: 'deflocculant',
      doseMl: deflocculantMl ?? (deflocculantMlPerLitre === undefined ? 0 : null),
      ...definedOnly({ doseMlPerLitre: deflocculantMlPerLitre, jarDrops, why }),
    },
  };
};

const titleOf = async ({ advice, verdict }: DoseAdvice, { words, book }: Asking): Promise<Reply['title']> => {
  const w = words.dose;
  const studio = await book.studio();
  if (advice.kind === 'none')
    return advice.why === 'hands-off' ? words.verdict.title(verdict, studio) : w.none(advice.why);
  const { next } = advice;
  if (next.kind === 'checkpoint') return w.checkpoint(next.totalPercent);
  if (next.kind === 'no-change') return w.noChange;
  if (next.kind === 'per-litre') return w.perLitre(next.dose);
  return advice.now ? w.now(next.dose) : w.later(words.verdict.title(verdict, studio), next.dose);
};

const flocculant = async (state: BucketState, asking: Asking): Promise<Reply> => {
  const { words, now, book } = asking;
  const w = words.dose;
  const { sure, hardWater } = await book.studio();
  const advised = adviseDose(state, now, sure);
  const { advice } = advised;
  const next = advice.kind === 'next' ? advice.next : undefined;
  const dose = next?.kind === 'dose' ? next : undefined;
  const isNow = advice.kind === 'next' && advice.now && dose !== undefined;
  const hand = dose && handDose(dose.dose);
  const added = { bucket: String(state.no), what: 'flocculant', amount: `${hand}ml` };
  const perLitre = next?.kind === 'per-litre' ? next.dose : undefined;
  const stopped = next?.kind === 'checkpoint' || next?.kind === 'no-change' ? next.kind : undefined;
  const { heptahydrate, doses, unknown } = state.flocculant;
  const counted = next && next.kind !== 'per-litre' ? next.totalPercent : undefined;
  const soFar = counted ?? (state.contents && (100 * heptahydrate) / state.contents.solids);
  return {
    kind: 'answer',
    title: words.verdict.headline(state.settings.name, await titleOf(advised, asking)),
    facts: [
      ...(dose ? [{ label: [w.factDose], text: w.dose(dose.heptahydrate, dose.percent) }] : []),
      { label: [w.factSoFar], text: w.soFar(soFar, doses, unknown) },
    ],
    dont: next ? w.dont() : [],
    cautions: advised.verdict.cautions.map(words.verdict.caution),
    reasons: [
      ...(dose ? [dose.interval ? w.learned(dose.interval, doses) : w.notLearned] : []),
      w.strength(saltInSaturatedSolution(householdVolumes['us-tsp']), roomTemperature),
      ...(dose && dose.dose < 2.5 ? [w.drops] : []),
      ...(next?.kind === 'checkpoint' ? [w.pastCheckpoint] : []),
      ...(hardWater ? [w.hardWater] : []),
    ],
    actions: isNow ? [pressToRun(words.verdict.dosed(`${hand} ml`), 'added', added, state.seq)] : [],
    data: {
      bucket: state.no,
      doseMl: dose?.dose ?? (perLitre === undefined ? 0 : null),
      ...definedOnly({ doseMlPerLitre: perLitre }),
      heptahydrateGrams: dose?.heptahydrate ?? (perLitre === undefined ? 0 : null),
      totalPercentOfDry: soFar ?? null,
      rung: doses + 1,
      learned: dose?.interval !== undefined,
      ...(dose?.interval && { interval: { low: dose.interval.low, high: dose.interval.high ?? null } }),
      now: isNow,
      ...definedOnly({ why: advice.kind === 'none' ? advice.why : stopped }),
    },
  };
};

export const dose = asks({
  name: 'dose',
  about: (w) => w.dose.about,
  who: 'member',
  options: {
    bucket: optional(bucket, (w) => w.dose.bucket),
    what: optional(pick(['flocculant', 'deflocculant', 'solution']), (w) => w.dose.what),
    water: optional(volume(10, 50_000, 'ml', '1l'), (w) => w.dose.water),
    temperature: optional(temperature(0, 40), (w) => w.dose.temperature),
  },
  async run(v, asking) {
    if (v.what === 'solution')
      return solution(v.water ?? millilitres(1000), v.temperature ?? roomTemperature, asking);
    if (!v.bucket) return refusal(asking.words.dose.which, { option: 'bucket' });
    if (!isForDipping(v.bucket.settings) && v.what !== 'deflocculant')
      return refusal(asking.words.dose.ownThickener(v.bucket.settings.name, v.bucket.settings.use));
    return v.what === 'deflocculant' ? deflocculant(v.bucket, asking) : flocculant(v.bucket, asking);
  },
});
