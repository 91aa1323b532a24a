import type { BucketEvent } from '../bucket/bucketEvent.ts';
import type { Entry } from '../entry.ts';
import type { CoatEvent } from '../resist/coatEvent.ts';
import { dipOf, type DipContext, type Dip } from '../firing/dip.ts';
import { bucketStates } from '../bucket/fold/foldBucket.ts';
import type { FiredState } from '../firing/foldFired.ts';
import { foldPieces } from '../piece/foldPieces.ts';
import { coatStream, entryId, pieceStream, seq, type Seq, type StreamNo } from '../ids.ts';
import type { PieceEvent } from '../piece/pieceEvent.ts';
import type { Logbook, LoggedEvent, Notes } from './ports.ts';

const isOfBucket = (entry: Entry<LoggedEvent>): entry is Entry<BucketEvent> => entry.stream > 0;
const isOfPiece = (entry: Entry<LoggedEvent>): entry is Entry<PieceEvent> => entry.stream === pieceStream;
const isCoatOn = (
  entry: (Entry<LoggedEvent> & Notes) | undefined,
): entry is Entry<CoatEvent> & Notes & { event: { kind: 'on' } } =>
  entry?.stream === coatStream && entry.event.kind === 'on' && entry.undoneBy === undefined;

const allEntries = { after: seq(0), most: Number.MAX_SAFE_INTEGER };

/** Adds to each result what the logbook knows about its dip. */
export const dipsOf = async (results: readonly FiredState[], book: Logbook): Promise<Dip[]> => {
  const studio = await book.studio();
  const layers = ({ said: { bucket, over } }: FiredState) => [bucket, ...(over === undefined ? [] : [over])];
  const buckets = new Map<StreamNo, DipContext['buckets'][number]>();
  for (const no of new Set(results.flatMap(layers))) {
    const entries = (await book.history(no, allEntries)).filter(isOfBucket);
    buckets.set(no, { entries, states: [...bucketStates(no, entries)] });
  }
  const planned = results.some(({ said }) => said.plan !== undefined);
  const pieces = planned ? foldPieces((await book.history(pieceStream, allEntries)).filter(isOfPiece)) : [];
  const plans = new Map(pieces.map((piece) => [piece.seq, piece]));
  const coatAt = async (place: Seq | undefined) => {
    const entry = place === undefined ? undefined : await book.entry(entryId(coatStream, place));
    return isCoatOn(entry) ? entry : undefined;
  };
  const dips: Dip[] = [];
  for (const result of results) {
    const { plan, coat } = result.said;
    dips.push(
      dipOf(result, {
        studio,
        buckets: layers(result).flatMap((no) => buckets.get(no) ?? []),
        plan: plan === undefined ? undefined : plans.get(plan),
        coat: await coatAt(coat),
      }),
    );
  }
  return dips;
};
