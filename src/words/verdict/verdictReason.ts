import type { Instant } from '../../studio/ids.ts';
import type { UnitSystem } from '../../studio/settings/studio.ts';
import type { Reason } from '../../studio/verdict/verdict.ts';
import { flowWords } from './flowWords.ts';
import { heldWhy } from './heldWhy.ts';
import {
  agoText,
  gravityText,
  gravityWithin,
  handAmount,
  massText,
  percentText,
  secondsText,
  spanText,
  temperatureText,
  volumeText,
  volumeWithin,
  windowText,
} from '../text/measures.ts';
import { pastCheckpoint } from './pastCheckpoint.ts';
import { restText } from './restText.ts';
import { said, t, type Part, type Text } from '../text/text.ts';

const band = { low: 'below', in: 'inside', high: 'above' } as const;

const voided: Record<Extract<Reason, { because: 'void' }>['by'], string> = {
  cake: 'A hard cake was felt, and broken up since,',
  sieved: 'Lumps were sieved out',
  frozen: 'It was frozen',
  contaminated: 'Something got into it',
};

interface VerdictSetting {
  units: UnitSystem;
  /** When a cake was felt that is not reported gone. */
  cakeSince?: Instant;
  member(id: Extract<Reason, { because: 'held' }>['hold']['by']): Part;
}

/** One thing that an answer rests on, with its numbers. */
export const verdictReason = (r: Reason, { units, member, cakeSince }: VerdictSetting): Text => {
  switch (r.because) {
    case 'held':
      return t`On hold${heldWhy(r.hold, (cause) => ` (${cause})`)}. By ${member(r.hold.by)}, ${{ at: r.hold.since, show: 'ago' }}.`;
    case 'retired':
      return t`It was retired.`;
    case 'cake':
      return t`A hard cake was felt at the bottom ${{ at: r.since, show: 'ago' }} and nobody has said that it is gone.`;
    case 'unsieved':
      if (r.what === 'frozen')
        return t`It froze, which leaves lumps: held since ${{ at: r.since, show: 'ago' }}, and not sieved since. Sieve it once it has thawed, then stir it, then weigh it. Its mesh: ${[String(r.mesh)]}.`;
      return r.mesh === 'never'
        ? t`${[r.what === 'skin' ? 'A skin was' : 'Lumps were']} seen ${{ at: r.since, show: 'ago' }}; this glaze is marked never to be sieved.`
        : t`${[r.what === 'skin' ? 'A skin was' : 'Lumps were']} seen ${{ at: r.since, show: 'ago' }}, and it has not been sieved since. Its mesh: ${r.mesh}. Dried glaze from the rim waits for the next batch.`;
    case 'never-stirred':
      if (r.thawed)
        return t`It has been frozen, and nobody has logged a stir since it was sieved: what was stirred before does not count.`;
      return t`Nobody has logged a stir. At rest a bucket parts into thin top and cake: it looks watery and is not.`;
    case 'rested':
      // “4 h ago; it may rest 4 h” would read as in time.
      if (r.hours < Math.max(1.1 * r.limitHours, r.limitHours < 3 ? 0 : r.limitHours + 0.5))
        return t`Last stirred a little over ${[spanText(r.limitHours)]} ago, which is how long it may rest. At rest it parts into thin top and cake: it looks watery and is not.`;
      return t`Last stirred ${{ at: r.at, show: 'ago' }}; it may rest ${[spanText(r.limitHours)]}. At rest it parts into thin top and cake: it looks watery and is not.`;
    case 'rest-learned':
      return restText(r);
    case 'stirred':
      if (r.ahead) return t`Its last stir is logged for a time that is still to come. Is a clock wrong?`;
      return t`Stirred ${{ at: r.at, show: 'ago' }}.`;
    case 'thin-coat':
      return t`It flows right, but its coat is thin meanwhile; with the water out it will flow thicker too.`;
    case 'no-window':
      return t`No gravity window is set for this bucket.`;
    case 'never-measured':
      return t`There is no reading taken on a stirred bucket yet.`;
    case 'unbelieved':
      return t`The reading of ${[gravityText(r.value)]} ${{ at: r.at, show: 'ago' }} is kept but not believed: ${[cakeSince !== undefined && cakeSince <= r.at ? 'a cake had been felt, and nobody had said that it was gone' : 'no stir to the bottom that left no cake was logged just before']}.`;
    case 'void':
      return t`${[voided[r.by]]} ${{ at: r.at, show: 'ago' }}: the gravity and the flow that were known before tell nothing any more.`;
    case 'stale':
      return t`Last believed reading ${{ at: r.at, show: 'day' }}, ${[agoText(r.days * 24)]} ago; good for ${[spanText(r.limitDays * 24)]}.`;
    case 'added-unknown':
      return t`${[r.count === 1 ? 'Something' : `${r.count} things`]} went in or came out since the last reading that can't be reckoned with: how much, or how full the pail is, was not said.`;
    case 'moved':
      return t`What was logged since could move gravity by ${[r.by.toFixed(3)]}, more than the reading's ± ${[r.u95.toFixed(3)]}.`;
    case 'predicted':
      return t`The logbook predicts ${[gravityWithin(r.value, r.u95)]}.`;
    case 'unsure':
      return t`± ${[r.u95.toFixed(3)]} is wider than the window ${[windowText(r.window)]}. A bigger cup, filled level, on a scale that shows 0.1 g, weighed twice, does better; a hydrometer does not.`;
    case 'gravity':
      return r.edge
        ? t`Gravity ${[gravityWithin(r.value, r.u95)]}: a little outside ${[windowText(r.window)]}, but inside within what the reading can tell.`
        : t`Gravity ${[gravityWithin(r.value, r.u95)]}, ${[band[r.band]]} its window ${[windowText(r.window)]}.`;
    case 'efflux':
      return t`${said(r.cup)}: ${[secondsText(r.seconds)]}, ${[flowWords[r.band]]} against ${[`${r.window.low} to ${r.window.high} s`]}.`;
    case 'off-temperature':
      return t`Timed at ${[temperatureText(r.temperature, units)]}: ${[r.temperature < r.room ? 'cold glaze runs slower and seems thicker' : 'warm glaze runs faster and seems thinner']} than it is at ${[temperatureText(r.room, units)]}.`;
    case 'efflux-no-window':
      return t`${said(r.cup)}: ${[secondsText(r.seconds)]}; no window of seconds is set for it, so it is only kept.`;
    case 'other-cup':
      return t`Timed with ${said(r.cup)}, but the window is for ${said(r.windowCup)}. Times of two cups are never compared.`;
    case 'look':
      return t`Finger look: ${[r.look]}.`;
    case 'disagree':
      return t`The cup says ${[flowWords[r.efflux]]}, the finger says ${[flowWords[r.look]]}. The cup decides; look again if it surprises you.`;
    case 'contradict':
      return t`The cup says ${[flowWords[r.efflux]]}, the finger says ${[flowWords[r.look]]}: one of them was a slip, and neither is believed.`;
    case 'flow-at-rest':
      return t`The look at the flow ${{ at: r.at, show: 'ago' }} came too long after the stir: kept, not believed.`;
    case 'unexpected':
      return t`The logbook expected ${[gravityWithin(r.value, r.u95)]}. A second reading tells whether this one was a slip, or something went in or out that nobody wrote down.`;
    case 'together':
      return t`${r.count} readings of this session taken together: ${[gravityWithin(r.value, r.u95)]}.`;
    case 'dose-at-work':
      return t`A dose went in ${{ at: r.at, show: 'ago' }}: it works for ten minutes once it is stirred in, and a look before then is kept, not counted.`;
    case 'flow-unknown':
      return t`No look at the flow since the last stir or change.`;
    case 'stirred-short':
      return r.minutes === undefined
        ? t`A bucket can be thixotropic: thick at rest, thin while stirred. How long it was stirred was not said.`
        : t`Stirred ${[spanText(r.minutes / 60)]}; a thixotropic bucket takes up to 5 minutes to loosen.`;
    case 'stirred-long':
      return t`Stirred ${[spanText(r.minutes / 60)]} in all, and still thick.`;
    case 'no-way-to-look':
      return t`It is marked for gloves, so no finger goes in, and no window of seconds is set to time a cup against.`;
    case 'just-mixed':
      return t`Just machine-mixed: air makes it read low and flow thin.`;
    case 'volume':
      return t`Worked out for ${[volumeWithin(r.value, r.u95, units)]}.`;
    case 'volume-old':
      return t`How full the pail is has not been said lately. Log the gap from rim to glaze, and the amount for the pail comes.`;
    case 'held-back':
      return t`${[String(Math.round((100 * r.safe) / r.wanted))]} % of the way to mid-window: more could pass the far edge.`;
    case 'pail-full':
      return t`${[r.fits < 1 ? 'Nothing' : `Only ${volumeText(handAmount(r.fits), units)}`]} fits with room to stir. Ladle some glaze into a second pail, say so, and ask again: what is left in this one needs less.`;
    case 'no-room-for-dry':
      return r.fits < 1
        ? t`The pail is full: dry batch goes in once clear water is off.`
        : t`Only ${[massText(handAmount(r.fits), units)]} of dry batch fits with room to stir, of ${[massText(handAmount(r.wanted), units)]}: draw clear water off first.`;
    case 'dose':
      return t`${[percentText(r.percent)]} of its dry mass: ${[massText(r.grams, units)]} of Epsom salt; with it, ${[percentText(r.totalPercent)]} in all since the last remake.`;
    case 'dose-learned':
      return r.high === undefined
        ? t`Learned from its own readings: at least ${[volumeText(r.low, units)]} to mid-window; how much at most, they don't say yet. Never more than two rungs at once.`
        : t`Learned from its own readings: ${[volumeText(r.low, units)]} to ${[volumeText(r.high, units)]} to mid-window, nine times in ten. Never more than two rungs at once.`;
    case 'dose-no-change':
      return t`The last two doses changed nothing: it is not flocculation that is missing. Is there clay in it?`;
    case 'dose-checkpoint':
      return t`${[percentText(r.totalPercent)]} of its dry mass has gone in since the last remake: past 0.2 % a keeper looks first. ${pastCheckpoint}`;
  }
};
