import { definedOnly } from '../../definedOnly.ts';
import { longStir, stirredLongBefore } from '../bucket/fold/applyObservations.ts';
import { gelsByItself } from '../bucket/bucketHazards.ts';
import { minutes, since, type Instant } from '../ids.ts';
import { barehanded } from '../settings/barehanded.ts';
import { gravityForAmounts, type Sureness } from './chooseByChance.ts';
import { grid, type Move } from './decisionTable.ts';
import type { Facts } from './facts.ts';
import { isForDipping } from './judgedBy.ts';
import { moveAmounts } from './moveAmounts.ts';
import { unbelieved, unexpected } from './rules.ts';
import type { Asked, FlowBand, GravityBand, Reason, Step, Verdict } from './verdict.ts';
import { verdictCautions } from './verdictCautions.ts';
import { bandReasons, verdictOn, type Chance } from './verdictOn.ts';

const airy = minutes(5);
const longStirBefore = ({ state: { stir }, now }: Facts): Instant | undefined => stirredLongBefore(stir, now);

export const conditions: Record<NonNullable<Move['when']>, (f: Facts) => boolean> = {
  'stirred-short': (f) => (f.state.stir?.minutes ?? 0) < longStir && longStirBefore(f) === undefined,
  'no-way-to-look': ({ state: { settings } }) => settings.efflux === undefined && !barehanded(settings),
  'gels-by-itself': ({ state: { settings } }) => gelsByItself(settings),
  'just-mixed': ({ state, flow }) =>
    state.stir?.mixedAt !== undefined && flow.at !== undefined && since(state.stir.mixedAt, flow.at) < airy,
};

const conditionReason = ({ when }: Move, f: Facts): Reason[] => {
  const { state, flow } = f;
  if (when === 'no-way-to-look') return [{ because: 'no-way-to-look' }];
  if (when === 'just-mixed') return [{ because: 'just-mixed' }];
  if (when === 'gels-by-itself') return [{ because: 'gels-by-itself' }];
  const { minutes: stirred } = state.stir ?? {};
  if (when === 'stirred-short') return [{ because: 'stirred-short', ...definedOnly({ minutes: stirred }) }];
  const before = longStirBefore(f);
  if (flow.band === 'thick' && before !== undefined) return [{ because: 'thick-again', stirred: before }];
  return flow.band === 'thick' && stirred !== undefined && stirred >= longStir
    ? [{ because: 'stirred-long', minutes: stirred }]
    : [];
};

/** It was timed in this visit, and not stirred since. */
const isJustTimed = ({ state: { efflux } }: Facts, { visit }: Sureness): boolean =>
  visit?.timed === true && efflux !== undefined && efflux.stirredSince !== true;

/** How to find out how it flows: by a finger, or by a cup where no bare finger may go in. */
const moveAsks = ({ state: { settings } }: Facts, asks: Asked[]): Asked[] =>
  asks.length > 0 ? asks : [barehanded(settings) ? 'look' : 'seconds'];

/** Flocculant thickens what is dipped in. Brushing and spraying glazes have gums, which only their keeper knows. */
const thickeningSteps: ReadonlySet<Step> = new Set(['flocculate', 'deflocculate']);
const toKeeper: Move = { step: 'ask-keeper', hands: 'anyone', amounts: [], dont: ['adjust'] };

export const byMove = (
  chance: Chance,
  { gravity, flow, asks = [] }: { gravity: GravityBand; flow: FlowBand; asks?: Asked[] },
): Verdict => {
  const { f, role, sureness } = chance;
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
  const isUnfilled = Object.keys(amounts).some((name) => name.endsWith('PerLitre'));
  const wanted = step === 'measure' ? moveAsks(f, asks) : isUnfilled ? ['level' as const] : [];
  return verdictOn(f, {
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
      ...bandReasons(chance),
      ...(gravity === 'low' && flow === 'in' ? [{ because: 'thin-coat' } as const] : []),
      ...(wanted[0] === 'seconds' && isJustTimed(f, sureness) ? [{ because: 'time-again' } as const] : []),
      ...conditionReason(move, f),
      ...(step === 'measure' && f.state.unknownSince.length > 0
        ? [{ because: 'added-unknown', count: f.state.unknownSince.length } as const]
        : []),
      ...(thickens ? [{ because: 'own-thickener', use } as const] : []),
      // A member tries nothing in a jar: a keeper does.
      ...reasons.filter(({ because }) => step === keepersStep || because !== 'jar-test'),
    ],
    dont: [
      ...(move.step === 'use' && f.state.stir?.addedSince ? (['use-unstirred'] as const) : []),
      ...move.dont,
    ],
    cautions: verdictCautions(move.step, f.state),
  });
};
