import { millilitres } from '../../../glaze/units.ts';
import { aged } from '../../belief/aged.ts';
import { place, type Belief, type Component } from '../../belief/mixture.ts';
import { withOthers } from '../../belief/fromOthers.ts';
import { withAnything, withGlance, withReading } from '../../belief/observed.ts';
import { loosened, unknown } from '../../belief/priors.ts';
import { forgotten, withMoved } from '../../belief/withAdded.ts';
import { reduced } from '../../belief/reduced.ts';
import { slowedBy, warmthAt } from '../../belief/warmth.ts';
import { middleFlow, startAnew } from '../../belief/startBelief.ts';
import { perhapsAsTold } from '../../belief/told.ts';
import { minutes, since, type Instant } from '../../ids.ts';
import type { BucketSettings } from '../../settings/bucketSettings.ts';
import { longStir, stirredLongBefore } from './applyObservations.ts';
import { additionOnBelief } from './additionOnBelief.ts';
import { statedVolume } from './applyVolume.ts';
import type { Added, BucketEntry, BucketEvent, FlowLook, BucketEventOf } from '../bucketEvent.ts';
import type { BucketState } from '../bucketState.ts';
import { shownIn } from '../learned.ts';
import { without } from '../without.ts';
import { sightsInReading, volumeSeen, type ReadingEntry } from './sightsInReading.ts';

/** An entry, with the bucket as it was before and after it. */
export interface FoldedEntry {
  entry: BucketEntry;
  before: BucketState;
  after: BucketState;
}

/** Pouring and stirring take longer than this. */
const timeToPour = minutes(1);

/** Somebody who logs only how full it is may be about to do what the bot told them. */
const readsWhatIsIn = (event: BucketEvent): boolean =>
  event.kind === 'reading' && (event.gravity ?? event.flow ?? event.look) !== undefined;

/** No other long stir is asked for, so that deflocculant is. */
const isStirredOut = ({ stir }: BucketState, at: Instant): boolean =>
  (stir?.minutes ?? 0) >= longStir || stirredLongBefore(stir, at) !== undefined;

/** A belief as of an entry: aged up to it, changed by it, then reduced to a few accounts. */
const changedAt = (
  belief: Belief,
  { entry, before, after: { settings } }: FoldedEntry,
  change: (components: readonly Component[]) => readonly Component[],
): Belief => {
  const { visit } = before.belief;
  const isLater = visit !== undefined && since(visit.at, entry.at) >= timeToPour;
  const then = aged(belief, entry.at, settings);
  const now =
    isLater && readsWhatIsIn(entry.event)
      ? perhapsAsTold({ ...then, visit }, settings, isStirredOut(before, entry.at))
      : then;
  return { ...then, components: reduced(change(now.components), settings) };
};

const anew = (belief: Belief, { entry, after: { settings } }: FoldedEntry): Belief =>
  startAnew(aged(belief, entry.at, settings), settings);

const onReading = (belief: Belief, reading: ReadingEntry, folded: FoldedEntry): Belief => {
  const { numbers, glances, belief: looked } = sightsInReading(belief, reading);
  const { settings } = folded.after;
  return numbers.length === 0 && glances.length === 0
    ? looked
    : changedAt(looked, folded, (before) => {
        let components = numbers.some(({ at }) => at !== place.volume)
          ? withAnything(before, settings)
          : before;
        for (const number of numbers) components = withReading(components, number);
        const { efflux } = settings;
        if (!efflux) return components;
        const slowed = slowedBy(warmthAt(looked, folded.entry.at));
        for (const glance of glances) components = withGlance(components, glance, efflux, slowed);
        return components;
      });
};

/**
 * What was read before says nothing of how it runs now. But a dose does not change gravity, so a weighing still
 * counts.
 */
const unread = ({ visit, ...belief }: Belief, { what }: Added): Belief =>
  visit?.weighed && (what === 'flocculant' || what === 'deflocculant')
    ? { ...belief, visit: { at: visit.at, readings: 0, weighed: true, timed: false, dosed: true } }
    : belief;

const onAddition = (
  belief: Belief,
  { added, remake }: BucketEventOf<'addition'>,
  folded: FoldedEntry,
): Belief => {
  if (remake) return anew(belief, folded);
  return changedAt(unread(belief, added), folded, (components) =>
    components.map((one) => additionOnBelief(one, added, folded.after.settings)),
  );
};

/** The window's cup is named only now, and it is the one that it was timed with. */
const isSameCup = ({ settings, efflux }: BucketState, named: string | undefined): boolean =>
  settings.cup === undefined && efflux !== undefined && (efflux.cup === named || efflux.kind === named);

const onChange = (
  belief: Belief,
  { volume }: { settings: Partial<BucketSettings>; volume?: number },
  folded: FoldedEntry,
): Belief => {
  const { before, after } = folded;
  const told = volume !== undefined && volume > 0 ? statedVolume(millilitres(volume)) : undefined;
  const otherCup = after.settings.cup !== before.settings.cup && !isSameCup(before, after.settings.cup);
  if (!told && !otherCup) return belief;
  return changedAt(belief, folded, (before) => {
    // Another cup counts other seconds.
    const components = otherCup
      ? before.map((one) => forgotten(one, place.flow, middleFlow(after.settings), unknown.flow))
      : before;
    return told ? withReading(components, volumeSeen(told)) : components;
  });
};

/** A long stir loosens a gel; a usual one, logged or not, leaves the belief as it was. */
const onStir = (belief: Belief, folded: FoldedEntry): Belief => {
  const { before, after, entry } = folded;
  const [was = 0, is = 0] = [before.stir?.minutes, after.stir?.minutes];
  if (is < loosened.minutes || is <= was || belief.loosened !== undefined) return belief;
  const changed = changedAt(belief, folded, (components) =>
    components.map((one) => withMoved(one, [place.flow, loosened.flow, loosened.sd])),
  );
  const { visit } = changed;
  // What runs differently now is not compared with what was read before.
  return { ...changed, loosened: entry.at, ...(visit && { visit: without(visit, 'reads') }) };
};

const lookAfterStir = (belief: Belief, look: FlowLook | undefined, folded: FoldedEntry): Belief => {
  if (look === undefined) return belief;
  const entry = { ...folded.entry, event: { kind: 'reading' as const, look, seen: [] } };
  return onReading(belief, { ...folded, entry }, folded);
};

const bearing = (belief: Belief, folded: FoldedEntry): Belief => {
  const { entry } = folded;
  const { event } = entry;
  switch (event.kind) {
    case 'reading':
      return onReading(belief, { ...folded, entry: { ...entry, event } }, folded);
    case 'addition':
      return onAddition(belief, event, folded);
    case 'change':
      return onChange(belief, event, folded);
    case 'stir':
      return lookAfterStir(onStir(belief, folded), event.look, folded);
    case 'learned':
      return withOthers(belief, shownIn(event));
    case 'setup':
    case 'sieve':
    case 'tile':
    case 'hold':
    case 'release':
    case 'retire':
    case 'undo':
      return belief;
  }
};

/**
 * The belief after one more entry. An entry that says nothing of the contents neither changes nor ages it, so a
 * logged stir and an unlogged one come to the same. An entry after which no measurement counts begins it anew.
 */
export const applyToBelief = (belief: Belief, folded: FoldedEntry): Belief => {
  const next = bearing(belief, folded);
  const { voided } = folded.after;
  return voided && voided !== folded.before.voided ? anew(next, folded) : next;
};
