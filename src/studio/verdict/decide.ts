import { barehanded } from '../settings/barehanded.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { grid, type Move } from './decisionTable.ts';
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
  if (when === 'stirred-short')
    return [{ because: 'stirred-short', ...(stirred !== undefined && { minutes: stirred }) }];
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

/** What was decided, and what the bucket reads whatever that is. Field by field: to spread them costs more than to decide. */
const verdictOn = (f: Facts, gravity: Verdict['gravity'], decided: Decided): Verdict => {
  const { state } = f;
  const verdict: Verdict = {
    step: decided.step,
    rule: decided.rule,
    gravity,
    predicted: f.predicted ?? null,
    window: state.settings.gravity ?? null,
    flow: knownFlow(f.flow.band),
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

/** What is done to a bucket by these cannot simply be taken back. */
const changes: ReadonlySet<Step> = new Set([
  'add-water',
  'draw-off-water',
  'add-dry',
  'flocculate',
  'deflocculate',
]);

const fromGrid = (f: Facts, role: Role, measured: NonNullable<Facts['measured']>): Verdict => {
  const moves = grid[measured.band][f.flow.band];
  const move = moves.find(({ when }) => when === undefined || conditions[when](f));
  if (!move) throw new Error(`no move for gravity ${measured.band}, flow ${f.flow.band}`);
  const { amounts, reasons, checkpoint } = moveAmounts(move, f, measured);
  const keepersStep = checkpoint ? 'ask-keeper' : move.step;
  const surprise = unexpected(f);
  const step = move.hands === 'keeper' && role === 'member' ? 'ask-keeper' : keepersStep;
  // What the grid rests on, even when a later reading that agrees was not believed.
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
      ...reasons,
    ],
    dont: [
      ...(surprise.length > 0 && changes.has(move.step) ? (['change-on-one-reading'] as const) : []),
      ...(move.step === 'use' && f.state.stir?.addedSince ? (['use-unstirred'] as const) : []),
      ...move.dont,
    ],
    cautions: verdictCautions(move.step, f.state),
  });
};

/** The first step that applies to a bucket as it stands: the rules in order, then the grid. */
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
        then: rule.then === 'what-follows-a-stir' ? afterStir(state, now, role) : rule.then,
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

/** What the same bucket would be told once it has been stirred to the bottom. */
const afterStir = (state: BucketState, now: Instant, role: Role): Verdict['step'] =>
  decide(withStir(state, { at: now }), { now, role }).step;
