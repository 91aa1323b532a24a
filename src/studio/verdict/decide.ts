import { definedOnly } from '../../definedOnly.ts';
import { barehanded } from '../settings/barehanded.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { grid, type Move } from './decisionTable.ts';
import { isForDipping, judgesFlow } from './judgedBy.ts';
import { minutes, since, type Instant, type Role } from '../ids.ts';
import { moveAmounts } from './moveAmounts.ts';
import { facts, rules, unbelieved, type Facts } from './rules.ts';
import { unexpected } from './unexpected.ts';
import { verdictCautions } from './verdictCautions.ts';
import type { FlowBand, Reason, Step, Verdict } from './verdict.ts';
import { believedAfterStir } from '../bucket/applyReading.ts';
import { withStir } from '../bucket/applyObservations.ts';

export interface DecideAt {
  now: Instant;
  role: Role;
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

type Decided = Pick<Verdict, 'step' | 'rule' | 'amounts' | 'reasons' | 'dont' | 'cautions'> & {
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

/** Steps that change a bucket and cannot easily be undone. */
const stepsThatChangeBucket: ReadonlySet<Step> = new Set([
  'add-water',
  'draw-off-water',
  'add-dry',
  'flocculate',
  'deflocculate',
]);

/** Flocculant thickens what is dipped in. Brushing and spraying glazes have gums, which only their keeper knows. */
const thickeningSteps: ReadonlySet<Step> = new Set(['flocculate', 'deflocculate']);
const toKeeper: Move = { step: 'ask-keeper', hands: 'anyone', amounts: [], dont: ['adjust'] };

const fromGrid = (f: Facts, role: Role, measured: NonNullable<Facts['measured']>): Verdict => {
  const moves = grid[measured.band][f.flow.band];
  const found = moves.find(({ when }) => when === undefined || conditions[when](f));
  if (!found) throw new Error(`no move for gravity ${measured.band}, flow ${f.flow.band}`);
  const { use } = f.state.settings;
  const thickens = !isForDipping({ use }) && thickeningSteps.has(found.step);
  const move = thickens ? toKeeper : found;
  const { amounts, reasons, checkpoint } = moveAmounts(move, f, measured);
  const keepersStep = checkpoint ? 'ask-keeper' : move.step;
  const surprise = unexpected(f);
  const step = move.hands === 'keeper' && role === 'member' ? 'ask-keeper' : keepersStep;
  // The reading that the grid used, even when a later, unbelieved one agrees with it.
  return verdictOn(f, asRead(f.read, true), {
    step,
    rule: 'grid',
    then: checkpoint ? undefined : move.then,
    keeperStep: step === 'ask-keeper' && role === 'member' ? keepersStep : undefined,
    amounts,
    reasons: [
      ...f.reasons,
      ...unbelieved(f),
      ...surprise,
      ...measured.reasons,
      ...f.flow.reasons,
      ...(measured.band === 'low' && f.flow.band === 'in' ? [{ because: 'thin-coat' } as const] : []),
      ...conditionReason(move, f),
      ...(thickens ? [{ because: 'own-thickener', use } as const] : []),
      ...reasons,
    ],
    dont: [
      ...(surprise.length > 0 && stepsThatChangeBucket.has(move.step)
        ? (['change-on-one-reading'] as const)
        : []),
      ...(move.step === 'use' && f.state.stir?.addedSince ? (['use-unstirred'] as const) : []),
      ...move.dont,
    ],
    cautions: verdictCautions(move.step, f.state),
  });
};

const thenOf = (then: (typeof rules)[number]['then'], state: BucketState, at: DecideAt): Step | undefined => {
  switch (then) {
    case 'what-follows-a-stir':
      return afterStir(state, at.now, at.role);
    case 'what-follows-a-sieve':
      return decide({ ...state, sieved: { at: at.now } }, at).step;
    default:
      return then;
  }
};

/** The first step that applies to a bucket: the rules in order, then the grid. */
export const decide = (state: BucketState, { now, role }: DecideAt): Verdict => {
  const f = facts(state, now);
  const rule = rules.find(({ applies }) => applies(f));
  if (rule) {
    return verdictOn(
      f,
      asRead(state.unbelieved ?? state.believed, state.unbelieved === undefined && !state.voided),
      {
        step: rule.step,
        rule: rule.name,
        then: thenOf(rule.then, state, { now, role }),
        keeperStep: undefined,
        amounts: {},
        reasons: rule.because(f),
        dont: rule.dont,
        cautions: verdictCautions(rule.step, state),
      },
    );
  }
  if (!f.measured) throw new Error(`bucket ${state.no} passed the rules without a measured gravity`);
  return fromGrid(f, role, f.measured);
};

/** The step for the same bucket after a stir to the bottom. */
const afterStir = (state: BucketState, now: Instant, role: Role): Verdict['step'] =>
  decide(withStir(state, { at: now }), { now, role }).step;
