import { definedOnly } from '../../definedOnly.ts';
import { barehanded } from '../settings/barehanded.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { grid, type Move } from './decisionTable.ts';
import { isForDipping, judgesFlow, judgesGravity } from './judgedBy.ts';
import { minutes, since, type Instant, type Role } from '../ids.ts';
import { moveAmounts } from './moveAmounts.ts';
import {
  chooseByChance,
  gravityForAmounts,
  mostReadings,
  surenessOf,
  type Sureness,
} from './chooseByChance.ts';
import { widerThanWindow } from './gravityBand.ts';
import { facts, type Facts } from './facts.ts';
import { rules, unbelieved, type Rule } from './rules.ts';
import { unexpected } from './unexpected.ts';
import { whyWeigh } from './whyWeigh.ts';
import { volumeNow } from '../bucket/volumeNow.ts';
import { verdictCautions } from './verdictCautions.ts';
import { usualSure } from '../settings/studio.ts';
import type { Asked, FlowBand, GravityBand, Reason, Step, Verdict } from './verdict.ts';
import { believedAfterStir } from '../bucket/applyReading.ts';
import { restLimitOf, usualRest } from '../bucket/rests.ts';
import { withStir } from '../bucket/applyObservations.ts';

export interface DecideAt {
  now: Instant;
  role: Role;
  /** How likely a bucket must be to be right for “use it”, 0 to 1; the usual when a keeper has set nothing. */
  sure?: number | undefined;
}

const longStir = 5;
const airy = minutes(5);

const conditions: Record<NonNullable<Move['when']>, (f: Facts) => boolean> = {
  'stirred-short': ({ state }) => (state.stir?.minutes ?? 0) < longStir,
  'no-way-to-look': ({ state: { settings } }) => settings.efflux === undefined && !barehanded(settings),
  'just-mixed': ({ state, flow }) =>
    state.stir?.mixedAt !== undefined && flow.at !== undefined && since(state.stir.mixedAt, flow.at) < airy,
};

const conditionReason = ({ when }: Move, { state, flow }: Facts): Reason[] => {
  if (when === 'no-way-to-look') return [{ because: 'no-way-to-look' }];
  if (when === 'just-mixed') return [{ because: 'just-mixed' }];
  const { minutes: stirred } = state.stir ?? {};
  if (when === 'stirred-short') return [{ because: 'stirred-short', ...definedOnly({ minutes: stirred }) }];
  return flow.band === 'thick' && stirred !== undefined && stirred >= longStir
    ? [{ because: 'stirred-long', minutes: stirred }]
    : [];
};

const knownFlow = (band: FlowBand) => (band === 'unknown' ? null : band);

type Decided = Pick<Verdict, 'step' | 'rule' | 'asks' | 'amounts' | 'reasons' | 'dont' | 'cautions'> & {
  then: Step | undefined;
  keeperStep: Step | undefined;
};

const isReadyToMeasure = ({ state: { stir }, now }: Facts): boolean =>
  stir !== undefined && !stir.addedSince && since(stir.at, now) <= believedAfterStir;

/**
 * The verdict: what was decided, and the bucket's readings. Field by field, because spreading them costs more than
 * deciding.
 */
const verdictOn = (f: Facts, gravity: Verdict['gravity'], decided: Decided): Verdict => {
  const { state } = f;
  const verdict: Verdict = {
    step: decided.step,
    rule: decided.rule,
    asks: decided.asks,
    gravity,
    predicted: f.predicted ?? null,
    window: state.settings.gravity ?? null,
    flow: judgesFlow(state.settings) ? knownFlow(f.flow.band) : null,
    gravityBand: f.measured ? f.measured.band : null,
    hoursSinceStir: f.hoursSinceStir ?? null,
    readyToMeasure: isReadyToMeasure(f),
    bucket: state.no,
    after: state.seq,
    amounts: decided.amounts,
    reasons: decided.reasons,
    dont: decided.dont,
    cautions: decided.cautions,
  };
  if (decided.then) verdict.then = decided.then;
  if (decided.keeperStep) verdict.keeperStep = decided.keeperStep;
  return verdict;
};

const asRead = (reading: BucketState['believed'], believed: boolean): Verdict['gravity'] =>
  reading ? { value: reading.value, u95: reading.u95, believed } : null;

/** How sure one is, as the belief stands, and when it was last weighed. */
const surely = ({ chances: { gravity, both }, visit }: Sureness, { state: { believed } }: Facts): Reason[] =>
  gravity
    ? [
        {
          because: 'sure',
          gravity: gravity.in,
          ...(both !== null && { both }),
          ...definedOnly({ weighed: believed?.at }),
          seenNow: visit !== undefined && visit.weighed && (visit.timed || visit.look !== undefined),
        },
      ]
    : [];

interface Chance {
  f: Facts;
  role: Role;
  sureness: Sureness;
}

/** How it flows is wanted, as it can be told here. */
const moveAsks = ({ state: { settings } }: Facts, asks: Asked[]): Asked[] =>
  asks.length > 0 ? asks : [barehanded(settings) ? 'look' : 'seconds'];

/** Flocculant thickens what is dipped in. Brushing and spraying glazes have gums, which only their keeper knows. */
const thickeningSteps: ReadonlySet<Step> = new Set(['flocculate', 'deflocculate']);
const toKeeper: Move = { step: 'ask-keeper', hands: 'anyone', amounts: [], dont: ['adjust'] };

/** A step of the grid, with its amounts. */
const byMove = (
  { f, role, sureness }: Chance,
  { gravity, flow, asks }: { gravity: GravityBand; flow: FlowBand; asks: Asked[] },
): Verdict => {
  const { measured } = f;
  const found = grid[gravity][flow].find(({ when }) => when === undefined || conditions[when](f));
  if (!found) throw new Error(`no move for gravity ${gravity}, flow ${flow}`);
  const { use } = f.state.settings;
  const thickens = !isForDipping({ use }) && thickeningSteps.has(found.step);
  const move = thickens ? toKeeper : found;
  if (!measured) throw new Error(`bucket ${f.state.no}: a move without a measured gravity`);
  const { amounts, reasons, checkpoint } = moveAmounts(move, f, gravityForAmounts(measured, sureness));
  const keepersStep = checkpoint ? 'ask-keeper' : move.step;
  const step = move.hands === 'keeper' && role === 'member' ? 'ask-keeper' : keepersStep;
  const isUnfilled = move.amounts.length > 0 && volumeNow(f.state, f.now) === undefined;
  const wanted = step === 'measure' ? moveAsks(f, asks) : isUnfilled ? ['level' as const] : [];
  // The reading that the grid used, even when a later, unbelieved one agrees with it.
  return verdictOn(f, asRead(f.read, true), {
    step,
    rule: 'grid',
    asks: wanted,
    then: checkpoint ? undefined : move.then,
    keeperStep: step === 'ask-keeper' && role === 'member' ? keepersStep : undefined,
    amounts,
    reasons: [
      ...f.reasons,
      ...unbelieved(f),
      ...unexpected(f),
      ...measured.reasons,
      ...f.flow.reasons,
      ...surely(sureness, f),
      ...(gravity === 'low' && flow === 'in' ? [{ because: 'thin-coat' } as const] : []),
      ...conditionReason(move, f),
      ...(thickens ? [{ because: 'own-thickener', use } as const] : []),
      ...reasons,
    ],
    dont: [
      ...(move.step === 'use' && f.state.stir?.addedSince ? (['use-unstirred'] as const) : []),
      ...move.dont,
    ],
    cautions: verdictCautions(move.step, f.state),
  });
};

/** A reading is wanted: how it flows, or first of all its weight, and then why. */
const byAsking = (chance: Chance, asks: Asked[]): Verdict => {
  const { f, sureness } = chance;
  // Weighed, and likely right: what is open is how it flows.
  if (f.measured && asks[0] !== 'weight') return byMove(chance, { gravity: 'in', flow: 'unknown', asks });
  const why = whyWeigh.find(({ applies }) => applies(f));
  if (why) return byRule(f, why, { asks, sureness });
  const weighed = f.state.believed?.at;
  return verdictOn(f, asRead(f.read, true), {
    step: 'measure',
    rule: 'weigh-first',
    asks,
    then: undefined,
    keeperStep: undefined,
    amounts: {},
    reasons: [
      ...f.reasons,
      ...unbelieved(f),
      ...unexpected(f),
      { because: 'weigh-first', ...definedOnly({ weighed }) },
      ...(conditions['just-mixed'](f) ? [{ because: 'just-mixed' } as const] : []),
      ...(f.measured?.reasons ?? []),
      ...f.flow.reasons,
      ...surely(sureness, f),
    ],
    dont: ['water-on-looks'],
    cautions: [],
  });
};

const unsettled = ({ f, sureness }: Chance): Verdict =>
  verdictOn(f, asRead(f.read, true), {
    step: 'ask-keeper',
    rule: 'unsettled',
    asks: [],
    then: undefined,
    keeperStep: undefined,
    amounts: {},
    reasons: [
      ...f.reasons,
      ...unexpected(f),
      { because: 'unsettled', readings: sureness.visit?.readings ?? 0 },
      ...(f.measured?.reasons ?? []),
      ...f.flow.reasons,
      ...surely(sureness, f),
    ],
    dont: ['adjust'],
    cautions: [],
  });

const isCoarse = ({ measured, state: { settings } }: Facts): boolean =>
  measured !== undefined && settings.gravity !== undefined && widerThanWindow(measured.u95, settings.gravity);

const byChance = (f: Facts, role: Role, sure: number): Verdict => {
  const sureness = surenessOf(f.state, f.now);
  const chance: Chance = { f, role, sureness };
  const chosen = chooseByChance(sureness, {
    sure,
    byFinger: f.flow.band,
    mayLook: barehanded(f.state.settings),
    isCoarse: isCoarse(f),
    isThickSince: f.flow.band === 'thick',
  });
  // However wide a window is, a bucket that was not weighed, or not since what was known was voided, is weighed first.
  if ((!f.measured || f.state.voided) && chosen.kind !== 'ask') return byAsking(chance, readNow(f.state));
  switch (chosen.kind) {
    case 'use':
      return isAboutToSettle(f) ? stirAgain(chance) : byMove(chance, { gravity: 'in', flow: 'in', asks: [] });
    case 'ask':
      return byAsking(chance, chosen.asks);
    case 'move':
      // Nobody pours on a belief that the last reading does not bear out.
      if (chosen.gravity !== 'in' && f.measured?.band !== chosen.gravity)
        return (sureness.visit?.readings ?? 0) >= mostReadings
          ? unsettled(chance)
          : byAsking(chance, ['weight']);
      return byMove(chance, chosen);
    case 'unsettled':
      return unsettled(chance);
  }
};

/** Where nobody knows how long a bucket may rest, a pot is not dipped long after a stir (common practice). */
const stirredForDip = minutes(45);

/** About to settle: it is stirred once more before it is used. */
const stirAgain = ({ f, sureness }: Chance): Verdict =>
  verdictOn(f, asRead(f.read, true), {
    step: 'stir',
    rule: 'stir-again',
    asks: [],
    then: 'use',
    keeperStep: undefined,
    amounts: {},
    reasons: [...f.reasons, ...unbelieved(f), ...(f.measured?.reasons ?? []), ...surely(sureness, f)],
    dont: ['water-in', 'water-out'],
    cautions: [],
  });

const isAboutToSettle = ({ state, now }: Facts): boolean =>
  state.stir !== undefined &&
  restLimitOf(state).limit === usualRest &&
  since(state.stir.at, now) > stirredForDip;

const byRule = (
  f: Facts,
  rule: Rule,
  { asks, sureness, then }: { asks: Asked[]; sureness?: Sureness; then?: Step | undefined },
): Verdict => {
  const { state } = f;
  return verdictOn(
    f,
    asRead(state.unbelieved ?? state.believed, state.unbelieved === undefined && !state.voided),
    {
      step: rule.step,
      rule: rule.name,
      asks,
      then,
      keeperStep: undefined,
      amounts: {},
      reasons: [...rule.because(f), ...(sureness ? surely(sureness, f) : [])],
      dont: rule.dont,
      cautions: verdictCautions(rule.step, state),
    },
  );
};

/** What is to be done with a bucket once it was stirred or sieved, and what is wanted then. */
const afterwards = (state: BucketState, at: DecideAt): { asks: Asked[]; then: Step } => {
  const { step, asks } = decide(state, at);
  // A later reading that does not count puts in doubt what the last one that does would change.
  return state.unbelieved && step !== 'use'
    ? { asks: readNow(state), then: 'measure' }
    : { asks, then: step };
};

/** What is read of a bucket that is judged by a rule. */
const readNow = ({ settings }: BucketState): Asked[] =>
  !judgesGravity(settings) ? ['seconds'] : judgesFlow(settings) ? ['weight', 'seconds'] : ['weight'];

/**
 * The first step that applies to a bucket: what comes before any reading, and then by how likely it is to be right. A
 * bucket without a window of gravity is nobody's to judge.
 */
export const decide = (state: BucketState, { now, role, sure = usualSure }: DecideAt): Verdict => {
  const f = facts(state, now);
  const rule =
    rules.find(({ applies }) => applies(f)) ??
    (state.settings.gravity ? undefined : whyWeigh.find(({ applies }) => applies(f)));
  if (!rule) return byChance(f, role, sure);
  const at = { now, role, sure };
  switch (rule.then) {
    case 'what-follows-a-stir':
      return byRule(f, rule, afterwards(withStir(state, { at: now }), at));
    case 'what-follows-a-sieve':
      return byRule(f, rule, afterwards({ ...state, sieved: { at: now } }, at));
    default:
      return byRule(f, rule, { asks: rule.step === 'measure' ? readNow(state) : [], then: rule.then });
  }
};
