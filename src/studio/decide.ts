import type { BucketState } from './bucketState.ts';
import { grid, type Move } from './decisionTable.ts';
import { minutes, since, type Instant, type Role } from './ids.ts';
import { moveAmounts } from './moveAmounts.ts';
import { facts, rules, unbelieved, type Facts } from './rules.ts';
import { verdictCautions } from './verdictCautions.ts';
import type { FlowBand, Reason, Verdict } from './verdict.ts';

export interface DecideAt {
  now: Instant;
  role: Role;
}

const longStir = 5;
const airy = minutes(5);

const conditions: Record<NonNullable<Move['when']>, (f: Facts) => boolean> = {
  'stirred-short': ({ state }) => (state.stir?.minutes ?? 0) < longStir,
  'just-mixed': ({ state, flow }) =>
    state.stir?.mixedAt !== undefined && flow.at !== undefined && since(state.stir.mixedAt, flow.at) < airy,
};

const conditionReason = ({ when }: Move, { state, flow }: Facts): Reason[] => {
  if (when === 'just-mixed') return [{ because: 'just-mixed' }];
  const { minutes: stirred } = state.stir ?? {};
  if (when === 'stirred-short')
    return [{ because: 'stirred-short', ...(stirred !== undefined && { minutes: stirred }) }];
  return flow.band === 'thick' && stirred !== undefined && stirred >= longStir
    ? [{ because: 'stirred-long', minutes: stirred }]
    : [];
};

const known = (band: FlowBand) => (band === 'unknown' ? null : band);

/** What the verdict says of the bucket, whatever the step. */
const readings = (
  f: Facts,
): Pick<
  Verdict,
  'gravity' | 'predicted' | 'window' | 'flow' | 'gravityBand' | 'hoursSinceStir' | 'bucket' | 'after'
> => {
  const { state } = f;
  const latest = state.unbelieved ?? state.believed;
  return {
    gravity: latest
      ? { value: latest.value, u95: latest.u95, believed: state.unbelieved === undefined }
      : null,
    predicted: f.predicted ?? null,
    window: state.settings.gravity ?? null,
    flow: known(f.flow.band),
    gravityBand: f.measured ? f.measured.band : null,
    hoursSinceStir: f.hoursSinceStir ?? null,
    bucket: state.no,
    after: state.seq,
  };
};

const fromGrid = (f: Facts, role: Role, measured: NonNullable<Facts['measured']>): Verdict => {
  const moves = grid[measured.band][f.flow.band];
  const move = moves.find(({ when }) => when === undefined || conditions[when](f));
  if (!move) throw new Error(`no move for gravity ${measured.band}, flow ${f.flow.band}`);
  const asked = move.hands === 'keeper' && role === 'member';
  const { amounts, reasons, checkpoint } = moveAmounts(move, f, measured);
  const step = asked || (checkpoint && role === 'member') ? 'ask-keeper' : move.step;
  const { believed } = f.state;
  return {
    ...readings(f),
    // What the grid rests on, even when a later reading that agrees was not believed.
    gravity: believed ? { value: believed.value, u95: believed.u95, believed: true } : null,
    step,
    rule: 'grid',
    ...(move.then && { then: move.then }),
    ...(step === 'ask-keeper' && { keeperStep: move.step }),
    amounts,
    reasons: [
      ...f.reasons,
      ...unbelieved(f),
      ...measured.reasons,
      ...f.flow.reasons,
      ...conditionReason(move, f),
      ...reasons,
    ],
    dont: move.dont,
    cautions: verdictCautions(move.step, f.state),
  };
};

/** The first step that applies to a bucket as it stands: the rules in order, then the grid. */
export const decide = (state: BucketState, { now, role }: DecideAt): Verdict => {
  const f = facts(state, now);
  const rule = rules.find(({ applies }) => applies(f));
  if (rule) {
    const then = rule.then === 'what-follows-a-stir' ? afterStir(state, now, role) : rule.then;
    const step = rule.step(f);
    return {
      ...readings(f),
      step,
      rule: rule.name,
      ...(then && { then }),
      amounts: {},
      reasons: rule.because(f),
      dont: rule.dont,
      cautions: verdictCautions(step, state),
    };
  }
  if (!f.measured) throw new Error(`bucket ${state.no} passed the rules without a measured gravity`);
  return fromGrid(f, role, f.measured);
};

/** What the same bucket would be told once it has been stirred to the bottom. */
const afterStir = (state: BucketState, now: Instant, role: Role): Verdict['step'] =>
  decide({ ...state, stir: { ...state.stir, at: now } }, { now, role }).step;
