import type { Instant } from '../../studio/ids.ts';
import type { Reason } from '../../studio/verdict/verdict.ts';
import { capital } from '../text/capital.ts';
import { agoText } from '../text/agoText.ts';
import { oddsText } from '../text/oddsText.ts';
import { doseText } from '../text/doseText.ts';
import { powderText, waterText, type Measures } from '../text/hand.ts';
import { flowWords } from './flowWords.ts';
import { heldWhy } from './heldWhy.ts';
import {
  chanceText,
  gravityText,
  gravityWithin,
  massText,
  percentText,
  secondsText,
  secondsWindowText,
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

const settled = 'It has settled: the top is thin, the bottom thick. Stir before you judge it.';

/** What ended the last reading's worth. */
export const voided: Record<Extract<Reason, { because: 'void' }>['by'], string> = {
  cake: 'a hard cake was felt',
  sieved: 'lumps were sieved out',
  frozen: 'it froze',
  contaminated: 'something got into it',
};

const ago = (at: Instant | undefined): Text => (at === undefined ? [] : t` (${{ at, show: 'ago' }})`);

/** Reasons without a number. */
const constantReasons = {
  retired: t`It was retired.`,
  'thin-coat': t`It flows right, but it puts on a thin coat. With the extra water gone, it will also flow thicker.`,
  'no-window': t`No window of gravity is set for this bucket.`,
  'never-measured': t`There is no reading yet that was taken just after a stir.`,
  'weigh-first': t`Weigh it before anything goes in: when it runs differently, somebody may have added water and not logged it.`,
  'time-again': t`One cup time does not settle it: a cup can clog, or be timed wrong.`,
  'added-since-stir': t`Something went in since the last stir.`,
  'flow-unknown': t`Nobody has looked at the flow since the last stir or change.`,
  'no-way-to-look': t`It is marked for gloves, so nobody dips a finger in, and no window of seconds is set.`,
  'just-mixed': t`It was just machine-mixed. The air in it makes it read low and flow thin.`,
  'volume-old': t`Nobody has said lately how full the pail is. Say it in a reading, such as two thirds, to get the amount for the whole pail.`,
  'dose-no-change': t`The last two doses changed nothing, so flocculant is not what it needs. Is there clay in it?`,
  'loosening-no-change': t`The last two doses of deflocculant left it as thick as it was. It may gel by itself, as borate glazes do. In that case a lower window of gravity often helps.`,
  'gels-by-itself': t`It holds raw borate, which gels by itself. Often a lower window of gravity is the remedy: a keeper tries that on a test tile.`,
};

interface VerdictSetting {
  measures: Measures;
  /** When a cake was felt that is not reported gone. */
  cakeSince?: Instant;
  member(id: Extract<Reason, { because: 'held' }>['hold']['by']): Part;
}

/** One thing that an answer rests on, with its numbers. */
export const verdictReason = (r: Reason, { measures, member, cakeSince }: VerdictSetting): Text => {
  const { units } = measures;
  switch (r.because) {
    case 'held':
      return t`On hold${heldWhy(r.hold, (cause) => ` (${cause})`)}. By ${member(r.hold.by)}, ${{ at: r.hold.since, show: 'ago' }}.`;
    case 'cake':
      return t`A hard cake was felt at the bottom ${{ at: r.since, show: 'ago' }} and nobody has said since that it is gone.`;
    case 'unsieved':
      if (r.what === 'frozen')
        return t`It was frozen ${{ at: r.since, show: 'ago' }}, which leaves lumps, and has not been sieved since. Once it has thawed, sieve it through ${[String(r.mesh)]} mesh, stir it, then weigh it.`;
      return r.mesh === 'never'
        ? t`${[r.what === 'skin' ? 'A skin was' : 'Lumps were']} seen ${{ at: r.since, show: 'ago' }}; this glaze is marked never to be sieved.`
        : t`${[r.what === 'skin' ? 'A skin was' : 'Lumps were']} seen ${{ at: r.since, show: 'ago' }}, and it has not been sieved since. Sieve it through ${[String(r.mesh)]} mesh. Dried glaze from the rim stays out: keep it for the next batch.`;
    case 'never-stirred':
      if (r.thawed)
        return t`It has been frozen, and nobody has logged a stir since it was sieved. Stirs before that do not count.`;
      return t`Nobody has logged a stir. ${[settled]}`;
    case 'rested':
      // “4 h ago; it may rest 4 h” would read as in time.
      if (r.hours < Math.max(1.1 * r.limitHours, r.limitHours < 3 ? 0 : r.limitHours + 0.5))
        return t`Last stirred a little over ${[spanText(r.limitHours)]} ago, which is how long it may rest. ${[settled]}`;
      return t`Last stirred ${{ at: r.at, show: 'ago' }}; it may rest ${[spanText(r.limitHours)]}. ${[settled]}`;
    case 'rest-learned':
      return restText(r);
    case 'stirred':
      if (r.ahead) return t`Its last stir is logged for a time that is still to come. Is a clock wrong?`;
      return t`Stirred ${{ at: r.at, show: 'ago' }}.`;
    case 'unbelieved':
      return t`The reading of ${[gravityText(r.value)]} ${{ at: r.at, show: 'ago' }} does not count: ${[cakeSince !== undefined && cakeSince <= r.at ? 'a cake had been felt before it, and nobody had said that it was gone' : 'no stir to the bottom was logged just before it']}.`;
    case 'void':
      return t`${[capital(voided[r.by])]} ${{ at: r.at, show: 'ago' }}, so the gravity and the flow from before no longer count.`;
    case 'stale':
      return t`The last reading that counts is from ${{ at: r.at, show: 'day' }}, ${[agoText(r.days * 24)]}. A reading is good for ${[spanText(r.limitDays * 24)]}.`;
    case 'added-unknown':
      return t`${[r.count === 1 ? 'Something' : `${r.count} things`]} went in or came out since the last reading, and the logbook can't tell how much that changed: the amount, or how full the pail is, was not given.`;
    case 'moved':
      return t`What was logged since the reading may have changed gravity by ${[r.by.toFixed(3)]}, more than the reading's ± ${[r.u95.toFixed(3)]}.`;
    case 'predicted':
      return t`From what was logged since, gravity should be ${[gravityWithin(r.value, r.u95)]}.`;
    case 'unsure':
      return t`± ${[r.u95.toFixed(3)]} is wider than the window ${[windowText(r.window)]}. For a better reading, fill a bigger cup level and weigh it twice on a scale that shows 0.1 g. A hydrometer is no better.`;
    case 'sure':
      return t`${r.weighed === undefined ? [] : t`Weighed ${{ at: r.weighed, show: 'ago' }}. `}The chance that ${[r.both === undefined ? 'gravity is' : 'gravity and flow are']} right is ${[oddsText(r.both ?? r.gravity)]}.`;
    case 'scale-this-time':
      return t`The last ${r.readings} readings were by hydrometer. Weigh a cup on the scale this time: a hydrometer that is off cannot be found from its own readings.`;
    case 'unsettled':
      return t`${[String(r.readings)]} readings in this visit do not agree well enough.`;
    case 'gravity':
      return r.edge
        ? t`Gravity ${[gravityWithin(r.value, r.u95)]}${ago(r.at)}: a little outside ${[windowText(r.window)]}, but by less than the reading can tell.`
        : t`Gravity ${[gravityWithin(r.value, r.u95)]}${ago(r.at)}, ${[band[r.band]]} its window ${[windowText(r.window)]}.`;
    case 'efflux':
      return t`${said(r.cup)}: ${[secondsText(r.seconds, r.u95)]}${ago(r.at)}${r.warmth ? [` at ${temperatureText(r.warmth.temperature, units)}, about ${secondsText(r.warmth.seconds)} at ${temperatureText(r.warmth.room, units)}`] : []}, which is ${[flowWords[r.band]]} (window ${[secondsWindowText(r.window)]}).`;
    case 'efflux-no-window':
      return t`${said(r.cup)}: ${[secondsText(r.seconds)]}. No window of seconds is set, so this is only logged.`;
    case 'other-cup':
      return t`Timed with ${said(r.cup)}, but the window is for ${said(r.windowCup)}. Times from different cups can't be compared.`;
    case 'look':
      return t`Finger look: ${[r.look]}${ago(r.at)}.`;
    case 'disagree':
      return t`The cup says ${[flowWords[r.efflux]]}, the finger says ${[flowWords[r.look]]}. The cup counts. Look again if that surprises you.`;
    case 'contradict':
      return t`The cup says ${[flowWords[r.efflux]]}, the finger says ${[flowWords[r.look]]}. One of them must be wrong, so neither counts.`;
    case 'flow-at-rest':
      return t`The look at the flow ${{ at: r.at, show: 'ago' }} came too long after the stir, so it does not count.`;
    case 'unexpected':
      return r.borneOut
        ? t`The logbook expected ${[gravityWithin(r.value, r.u95)]}: something went in or out, it seems, that nobody logged.`
        : t`The logbook expected ${[gravityWithin(r.value, r.u95)]}. A second reading tells whether this one was wrong, or something went in or out that nobody logged.`;
    case 'together':
      return t`${r.count} readings from this session, taken together, give ${[gravityWithin(r.value, r.u95)]}.`;
    case 'dose-at-work':
      return t`A dose went in ${{ at: r.at, show: 'ago' }}. Once stirred in, it takes ten minutes to work. A look before that does not count.`;
    case 'flow-not-judged':
      return t`It is for ${[r.use]} and has no window of seconds, so its flow is not judged.`;
    case 'no-window-needed':
      return t`It is for ${[r.use]}, and its keeper set no window, so its water is not judged. Try it on a test tile.`;
    case 'spray-unsieved':
      return r.at === undefined
        ? t`It is for spraying, and no sieving is logged. Lumps clog the gun.`
        : t`It is for spraying, and was last sieved ${{ at: r.at, show: 'ago' }}. Sieve it again after ${[spanText(r.limitHours)]}: lumps clog the gun.`;
    case 'own-thickener':
      return t`It is for ${[r.use]}: what makes it thick or thin is its gum, not flocculant.`;
    case 'stirred-short':
      return r.minutes === undefined
        ? t`Some glazes set like jelly at rest, and loosen while they are stirred. Nobody said how long it was stirred.`
        : t`Stirred ${[spanText(r.minutes / 60)]}. A glaze that sets like jelly at rest takes up to 5 minutes to loosen.`;
    case 'stirred-long':
      return t`Stirred ${[spanText(r.minutes / 60)]} in all, and still thick.`;
    case 'thick-again':
      return t`It was stirred long ${{ at: r.stirred, show: 'ago' }}, and is thick again.`;
    case 'volume':
      return t`Worked out for ${[volumeWithin(r.value, r.u95, units)]}.`;
    case 'held-back':
      return t`This is ${[String(Math.round((100 * r.safe) / r.wanted))]} % of what would bring it to the middle of its window; more might take it too far.`;
    case 'pail-full':
      return t`${[r.fits < 1 ? 'Nothing' : `Only ${waterText(r.fits, units)}`]} fits with room to stir. Ladle some glaze into a second pail, log that, and ask again: the rest needs less.`;
    case 'no-room-for-dry':
      return r.fits < 1
        ? t`The pail is full. Dry batch goes in only after clear water has come off.`
        : t`Only ${[powderText(r.fits, measures)]} of the ${[powderText(r.wanted, measures)]} of dry batch fits with room to stir. Draw clear water off first.`;
    case 'dose':
      return t`${[percentText(r.percent)]} of its dry weight: ${[massText(r.grams, units)]} of Epsom salt. That makes ${[percentText(r.totalPercent)]} in all since the last fresh batch.`;
    case 'dose-learned':
      return r.high === undefined
        ? t`Learned from this bucket's readings: it takes at least ${[volumeText(r.low, units)]} to reach the middle of its window. The most it may take is not known yet. Never more than two usual doses at once.`
        : t`Learned from this bucket's readings: it takes ${[volumeText(r.low, units)]} to ${[volumeText(r.high, units)]} to reach the middle of its window, 9 times out of 10. Never more than two usual doses at once.`;
    case 'jar-test':
      return t`${[r.cold ? 'Let the jar warm to room temperature first: cold glaze looks thicker than it is. ' : '']}Stir it in the jar for a minute, and wait another: it keeps getting thinner. Still thick: one more drop, up to ${[String(r.most)]} in all.${r.each === undefined ? [] : t` Each drop in the jar is ${[doseText(r.each)]} in the pail.`}`;
    case 'loosening-learned':
      return t`Learned from this bucket's readings: a drop in 250 ml takes ${[chanceText(Math.round(100 * r.less) / 100)]} off its seconds, 9 times out of 10 between ${[String(Math.round(100 * r.least))]} and ${[String(Math.round(100 * r.most))]} %.`;
    case 'loosening-checkpoint':
      return t`As much deflocculant as ${[String(Math.round(10 * r.steps) / 10)]} drops in each 250 ml has gone in since the last fresh batch. A keeper looks at it before more goes in, and logs what they add as usual.`;
    case 'dose-checkpoint':
      return t`${[percentText(r.totalPercent)]} of its dry weight has gone in since the last fresh batch. Above 0.2 %, a keeper looks at it first. ${pastCheckpoint}`;
    default:
      return constantReasons[r.because];
  }
};
