import { present } from '../../present.ts';
import { pressToEdit, pressToRun } from '../../contract/replyParts.ts';
import { definedOnly } from '../../definedOnly.ts';
import type { Action, Asking, Reply } from '../../contract/contract.ts';
import { bucketStates } from '../../studio/bucket/fold/foldBucket.ts';
import type { BucketState } from '../../studio/bucket/bucketState.ts';
import {
  proposeWindow,
  ranAt20,
  type DippedAt,
  type WindowProposal,
} from '../../studio/firing/proposeWindow.ts';
import { seq, since } from '../../studio/ids.ts';
import { dipsOf } from '../../studio/logbook/dipsOf.ts';
import type { BucketEntry } from '../../studio/bucket/bucketEvent.ts';
import type { Verdict } from '../../studio/verdict/verdict.ts';

/** The last good results are enough. */
const mostResults = 20;
const allEntries = { after: seq(0), most: Number.MAX_SAFE_INTEGER };

/** What a bucket read when pieces that came out well were dipped in it alone. */
const wellFired = async (state: BucketState, { book }: Pick<Asking, 'book'>): Promise<DippedAt[]> => {
  const good = (await book.fired())
    .filter(({ said }) => said.bucket === state.no && said.faults.length === 0 && said.over === undefined)
    .slice(-mostResults);
  if (good.length === 0) return [];
  const entries = (await book.history(state.no, allEntries)).filter(
    (entry): entry is BucketEntry => entry.stream > 0,
  );
  const states = [...bucketStates(state.no, entries)];
  return (await dipsOf(good, book)).flatMap(({ dipped }): DippedAt[] => {
    const then = dipped && states.findLast(({ foldedTo }) => foldedTo <= dipped.to);
    if (!dipped || !then?.believed || then.voided || then.unknownSince.length > 0) return [];
    if (since(then.believed.at, dipped.to) > then.settings.shelfLife) return [];
    const { predicted, believed } = then;
    return [{ gravity: predicted?.value ?? believed.value, ...definedOnly({ flow: ranAt20(then) }) }];
  });
};

/** Whether a window is what a bucket lacks. */
export const lacksWindow = ({ rule, step, reasons }: Verdict): boolean =>
  rule === 'no-window' ||
  reasons.some(
    ({ because }) => because === 'no-way-to-look' || (step === 'use' && because === 'efflux-no-window'),
  );

/** A window for a bucket that lacks one, from what it is known to have been right at. */
export const windowFor = async (
  state: BucketState,
  asking: Pick<Asking, 'book'>,
): Promise<WindowProposal | undefined> => proposeWindow(state, await wellFired(state, asking));

const span = ({ low, high }: { low: number; high: number }, decimals: number): string =>
  `${low.toFixed(decimals)}-${high.toFixed(decimals)}`;

/** One press by which a keeper sets it. */
export const windowPress = (
  state: Pick<BucketState, 'no' | 'seq'>,
  proposal: WindowProposal,
  { words }: Pick<Asking, 'words'>,
): Action => {
  const { gravity, efflux, cup } = proposal;
  const typed = {
    bucket: String(state.no),
    gravity: gravity && span(gravity, 2),
    seconds: efflux && span(efflux, 0),
    cup,
  };
  return pressToRun(words.verdict.isRight(proposal), 'bucket change', typed, state.seq);
};

/** What to do about a bucket without a window, as part of its answer. */
export const windowReply = (
  state: BucketState,
  proposal: WindowProposal | undefined,
  { words, role }: Pick<Asking, 'words' | 'role'>,
): { actions: Action[]; data: Reply['data'] } => ({
  actions: present([
    role === 'keeper' &&
      (proposal
        ? windowPress(state, proposal, { words })
        : pressToEdit(words.round.setWindow, 'bucket change', { bucket: String(state.no) })),
    // What anybody can do meanwhile: a test tile tells more than a gravity does.
    pressToEdit(words.verdict.logTile, 'dip tile', { bucket: String(state.no) }),
  ]),
  data: definedOnly({
    proposed:
      proposal &&
      definedOnly({
        from: proposal.from,
        gravity: proposal.gravity && { ...proposal.gravity },
        seconds: proposal.efflux && { ...proposal.efflux },
        cup: proposal.cup,
      }),
  }),
});
