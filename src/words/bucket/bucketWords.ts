import { present } from '../../present.ts';
import type { BucketCaution, Window } from '../../studio/settings/bucketSettings.ts';
import type { Poison } from '../../studio/bucket/bucketHazards.ts';
import type { UnitSystem } from '../../studio/settings/studio.ts';
import type { Step, Verdict } from '../../studio/verdict/verdict.ts';
import { waterText } from '../text/hand.ts';
import {
  dryContentText,
  gravityText,
  secondsWindowText,
  spanText,
  volumeAbout,
  volumeText,
  windowText,
} from '../text/measures.ts';
import { agoText } from '../text/agoText.ts';
import { bucketCautionWords } from '../verdict/bucketCautionWords.ts';
import { said, t, type Text, join, quotedNames } from '../text/text.ts';
import { listed } from '../text/listed.ts';

const stepWords: Record<Step, string> = {
  'on-hold': 'on hold',
  sieve: 'sieve',
  stir: 'stir first',
  measure: 'measure',
  use: 'ready',
  'add-water': 'needs water',
  'draw-off-water': 'too much water',
  'add-dry': 'needs dry batch',
  flocculate: 'needs flocculant',
  'stir-on': 'stir on',
  deflocculate: 'thick, needs no water',
  'ask-keeper': 'ask a keeper',
};

export const bucketWords = {
  about: 'The shared buckets: list, card and log; keepers set up, change, hold and retire them',
  list: 'All buckets and what each one needs',
  show: "A bucket's card and chart",
  log: 'The logbook, newest first: of one bucket, or of all',
  logOf: 'Which bucket, if not all of them',
  add: 'Set a bucket up',
  change: 'Change a bucket’s settings',
  hold: 'Put a bucket on hold: nobody uses or changes it',
  release: 'Let a held bucket be used again',
  retire: 'Take a bucket out of use for good; its log stays',
  name: 'What the bucket is called',
  nick: 'A short name to type',
  pail: 'How much the pail holds, filled to the rim',
  volume: 'How much glaze is in it now',
  gravity: 'Specific gravity that it should have, from low to high',
  seconds: 'Cup seconds that it should have, from low to high',
  cup: 'The flow cup that the seconds are for',
  solids: 'Gravity of the dry powder, if it is not 2.6',
  rest: 'How long it may stand after a stir before it needs another (usually 1 h)',
  fresh: 'How long a reading stays good (usually 7 days)',
  mesh: 'Its sieve mesh (usually 80), or never for a glaze that is never sieved',
  use: 'What it is for',
  cautions: 'Everything to warn of (gloves, caustic, barium …), or none',
  recipe: 'Its recipe: the name of one that the studio keeps, or the materials',
  glaze: 'The name of the glaze, if several pails hold the same one',
  sameAs: 'Another bucket with the same glaze, so that one may be poured into the other',
  cone: 'The cone that it fires to, or none',
  atmosphere: 'The air that it fires in, such as oxidation, reduction or soda, or none',
  bodies: 'The clays that it goes on, or none',
  rim: 'Inside diameter at the rim',
  bottom: 'Inside diameter at the bottom',
  height: 'Inside height',
  why: 'Why it is held',
  cause: 'What kind of trouble',
  most: 'How many entries to show',
  before: 'Only entries before this number',
  retiredToo: 'Show retired ones too',
  factNumber: 'Bucket',
  factMadeFor: 'Made for',
  factRecipe: 'Recipe',
  factWindow: 'Should be',
  factVolume: 'Holds',
  factPowder: 'Powder',
  factDry: 'Dry content',
  factRest: 'May rest',
  restSet: (hours: number): Text => t`${[spanText(hours)]} after a stir, as a keeper set`,
  label: (no: number, name: string, { retired, held }: { retired: boolean; held: boolean }): string =>
    `${no} · ${name}${retired ? ' (retired)' : held ? ' (on hold)' : ''}`,
  numberAndNick: (no: number, nick: string | undefined): Text =>
    nick === undefined ? t`${no}` : t`${no}, “${said(nick)}” for short`,
  windows: (
    gravity: Window<number> | undefined,
    efflux: Window<number> | undefined,
    cup: string | undefined,
  ): Text => {
    const both = present([gravity && windowText(gravity), efflux && secondsWindowText(efflux)]).join(', ');
    return cup !== undefined && efflux ? t`${[both]} by ${said(cup)}` : [both];
  },
  holds: (ml: number, pail: number | undefined, units: UnitSystem): Text =>
    pail === undefined
      ? t`about ${[volumeAbout(ml, units)]}`
      : t`about ${[volumeAbout(ml, units)]} of ${[volumeText(pail, units)]}`,
  powder: (solids: number, usual: boolean): Text =>
    usual
      ? t`gravity ${[String(solids)]}, the usual value; a keeper can set another`
      : t`gravity ${[String(solids)]}`,
  dry: (perLitre: number, fraction: number, units: UnitSystem): Text =>
    t`${[dryContentText(perLitre, units)]}, ${[`${(100 * fraction).toFixed(0)} %`]} of it by volume`,
  caution: (caution: BucketCaution): Text => [bucketCautionWords[caution]],
  added: (no: number, name: string, held: boolean): Text =>
    held
      ? t`${said(name)} is bucket ${no}, and it is on hold.`
      : t`${said(name)} is bucket ${no}. Stir it, then log a first reading.`,
  noWindow: t`Don’t change it before you have set the gravity that it should have: without that, nobody can tell thick from thin.`,
  changed: (name: string, held: boolean): Text =>
    held ? t`${said(name)} is changed, and it is on hold.` : t`${said(name)} is changed.`,
  pouredOn: (others: readonly { no: number; name: string }[], marks: readonly BucketCaution[]): Text =>
    t`Since its last fresh batch, glaze from it went into ${join(
      others.map(({ no, name }) => t`${said(name)} (bucket ${no})`),
      ', ',
    )}, not yet marked with ${[listed(marks)]}. Mark them too, and don't use them before that.`,
  markToo: (name: string): Text => t`Mark ${said(name)} too`,
  noteNames: (marks: readonly BucketCaution[]): Text =>
    t`Your note names ${[listed(marks)]}, and this bucket is not marked with that. If it went in, nobody uses the bucket until a keeper has looked at it.`,
  holdIt: t`Put it on hold`,
  wentIn: t`Log that it went in`,
  wentInHold: t`Log that it went in, and hold it`,
  poison: (what: Poison): string =>
    `${what === 'lead' || what === 'cadmium' ? 'raw ' : ''}${what}: held until a keeper and a laboratory have cleared it`,
  mixedWith: (name: string): string => `glaze from ${name} went in`,
  mixedWithHeld: (name: string): string => `glaze went in from ${name}, which was on hold`,
  mixedWithUnknown: 'glaze went in, and nobody said which',
  sameAsItself: t`That is the same bucket. Name another. Nothing was saved.`,
  sameAsAndGlaze: t`Say same-as: or glaze:, not both. Nothing was saved.`,
  sameAsApart: (name: string, no: number): Text =>
    t`Another glaze or a fresh batch has gone into ${said(name)} since its glaze was named. First say what it holds now: /bucket change bucket:${no} glaze: and its name. Nothing was saved.`,
  sameNow: (other: string): Text =>
    t`It holds the same glaze as ${said(other)} and every other bucket of that glaze, until another glaze or a fresh batch goes in.`,
  childrenAndHazard: (hazard: string): Text =>
    t`A bucket with ${[hazard]} in it is not for children. Choose one of the two marks. Nothing was saved.`,
  childrenAndUnknown: (materials: readonly string[]): Text =>
    t`Children may not use a bucket while nobody has said what ${quotedNames(materials)} is. A keeper says it after reading its safety sheet: /studio material. Nothing was saved.`,
  childrenAndKnown: (poison: string): Text =>
    t`Its recipe, its name, its marks or what was poured into it say that it holds ${[poison]}: it is not for children. Nothing was saved.`,
  childrenAgain: t`Something went into it, and no keeper has said since what that was. Are you sure that children may use it? Nothing is saved yet.`,
  marksGone: (hazards: readonly BucketCaution[]): Text =>
    t`Its recipe, its name, its marks or what was poured into it say: ${[hazards.join(', ')]}. Nobody would be warned of that any more. Are you sure that it is not so? Nothing is saved yet.`,
  poisonGone: (poison: string): Text =>
    t`It is marked with ${[poison]}, which is poisonous. Which laboratory or safety sheet says that it is not so? The log keeps your answer. Nothing is saved yet.`,
  poisonGoneWhy: t`Say why`,
  poisonTakenAway: (poison: string): Text =>
    t`Nobody is warned of ${[poison]} here any more. The log keeps who took the warning away, and why.`,
  marksGoneSure: t`Take the warnings away`,
  marksGoneEdit: t`Change the line`,
  sureMarks: 'Take warnings of known hazards away without being asked again',
  releasePoison: (name: string, poison: string): Text =>
    t`${said(name)} is on hold for ${[poison]}. Only a keeper may clear it, after a laboratory has tested it. If your local rules name an authority, ask it too. Has that been done? The bucket is still on hold.`,
  releaseSure: t`It is cleared: release it`,
  sureRelease: 'If it was held for a hazard: has that been cleared?',
  anyHazard: 'a hazard',
  nothingToChange: t`Say what to change, such as gravity:1.42-1.46.`,
  nameTaken: (name: string, no: number): Text =>
    t`“${said(name)}” is bucket ${no} already. Pick another name.`,
  looksLike: (name: string, other: string, no: number): Text =>
    t`“${said(name)}” looks just like ${said(other)}, bucket ${no}, and people would mix them up. Pick another name. Nothing was saved.`,
  nameIsNumber: (name: string): Text =>
    t`“${said(name)}” is a number, and buckets have numbers already. Pick a name with letters.`,
  moreThanPail: (volume: number, pail: number, units: UnitSystem): Text =>
    t`${[volumeText(volume, units)]} does not fit a pail of ${[volumeText(pail, units)]}.`,
  windowAboveSolids: (high: number, solids: number): Text =>
    t`A glaze can't reach ${[gravityText(high)]} when its dry powder is ${[gravityText(solids)]}.`,
  oddShape: t`That pail is far wider at the bottom than at the rim. Are rim and bottom the wrong way round?`,
  notHeld: (name: string): Text => t`${said(name)} is not on hold.`,
  alreadyRetired: (name: string): Text => t`${said(name)} is retired already.`,
  listTitle: (count: number, ready: number): Text =>
    count === 0
      ? t`There are no buckets yet. A keeper can set one up.`
      : t`${ready} of ${count} ready to use.`,
  setUp: t`Set a bucket up`,
  listName: (no: number, name: string): Text => t`${no} · ${said(name)}`,
  listText: (verdict: Verdict, units: UnitSystem): Text => {
    const amount =
      verdict.amounts.waterMl === undefined ? '' : ` (${waterText(verdict.amounts.waterMl, units)})`;
    const gravity = verdict.gravity?.believed ? `, ${gravityText(verdict.gravity.value)}` : '';
    const stir =
      verdict.hoursSinceStir === null ? ', no stir logged' : `, stirred ${agoText(verdict.hoursSinceStir)}`;
    return [`${stepWords[verdict.keeperStep ?? verdict.step]}${amount}${gravity}${stir}`];
  },
  stepName: (step: Step): string => stepWords[step],
  stepNames: stepWords,
  logTitle: (name: string, count: number): Text =>
    count === 0
      ? t`Nothing is logged for ${said(name)} before that.`
      : t`${said(name)}: the last ${count} entries.`,
  logOfAll: (count: number): Text =>
    count === 0 ? t`Nothing is logged before that.` : t`All buckets: the last ${count} entries.`,
  logOfOne: t`Of one bucket`,
  older: t`Older`,
};
