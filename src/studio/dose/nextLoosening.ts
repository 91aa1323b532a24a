import { dryContent } from '../../glaze/slurry/slurry.ts';
import { millilitres, type Gravity, type Millilitres } from '../../glaze/units.ts';
import { effluxAt20 } from '../bucket/effluxAt20.ts';
import type { BucketState } from '../bucket/bucketState.ts';
import { loosenStepPerLitre } from '../bucket/flowPoints.ts';
import { learnLoosening, stillThickAfter, type LearnedLoosening } from './learnLoosening.ts';
import { aimedGravity, checkpointOfDry, flowAim } from './nextDose.ts';

/** More drops than this in a jar are no small correction any more. */
const mostDrops = 3;

export type NextLoosening =
  | {
      kind: 'jar';
      /** Drops to start with in the jar of 250 ml. */
      drops: number;
      /** So many in all, when it stays thick. */
      most: number;
      /** For that many drops, in the pail; for each litre when its volume is unknown. */
      dose: { ml: Millilitres } | { mlPerLitre: Millilitres };
      learned?: LearnedLoosening;
    }
  /** So much is in since it last ran right, or since the last fresh batch, that a keeper looks first. */
  | { kind: 'checkpoint'; steps: number }
  /** Two steps left it as thick as it was: something else makes it thick. */
  | { kind: 'no-change' };

/** Drops that the bucket's own readings ask for, less rather than more: what is in can't be taken out. */
const dropsFor = (state: BucketState, learned: LearnedLoosening | undefined): number => {
  const window = state.settings.efflux;
  const seconds = effluxAt20(state);
  if (!learned || !window || seconds === undefined || seconds === 'wont-run') return 1;
  const wanted = Math.log(seconds / ((window.low + window.high) / 2));
  // By its strongest likely effect, so that the coat does not run thin.
  const drops = Math.floor(wanted / -learned.low);
  return Math.max(1, drops);
};

/** The next deflocculant of a bucket that is thick at the right gravity: a jar test, and what that comes to in the pail. */
export const nextLoosening = (
  state: BucketState,
  slurry: Gravity,
  volume: Millilitres | undefined,
): NextLoosening => {
  const aim = flowAim(state);
  const { steps = 0, flow = [], right = 0 } = state.deflocculant ?? {};
  if (aim && stillThickAfter(flow, aim)) return { kind: 'no-change' };
  const found = aim ? learnLoosening({ points: flow, cup: aim.cup, gravity: slurry }) : undefined;
  const learned = found?.kind === 'learned' ? found : undefined;
  const dry = dryContent({
    slurry: aimedGravity(slurry, state.settings),
    particleGravity: state.settings.solids,
  });
  if (!dry.ok) throw new Error(`bucket ${state.no}: no dry content for gravity ${slurry}`);
  // A millilitre of it weighs a gram and a little more.
  const room = Math.floor((checkpointOfDry * dry.value) / loosenStepPerLitre - (steps - right));
  if (room < 1) return { kind: 'checkpoint', steps };
  const most = Math.min(mostDrops, room);
  const drops = Math.min(most, dropsFor(state, learned));
  const mlPerLitre = millilitres(drops * loosenStepPerLitre);
  return {
    kind: 'jar',
    drops,
    most,
    dose: volume === undefined ? { mlPerLitre } : { ml: millilitres((mlPerLitre * volume) / 1000) },
    ...(learned && { learned }),
  };
};
