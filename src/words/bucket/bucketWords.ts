import type { BucketCaution } from '../../studio/settings/bucketSettings.ts';
import type { Poison } from '../../studio/bucket/bucketHazards.ts';
import type { UnitSystem } from '../../studio/settings/studio.ts';
import type { Step, Verdict } from '../../studio/verdict/verdict.ts';
import {
  agoText,
  dryContentText,
  gravityText,
  handAmount,
  volumeAbout,
  volumeText,
  windowText,
} from '../text/measures.ts';
import { bucketCautionWords } from '../verdict/bucketCautionWords.ts';
import { said, t, type Text } from '../text/text.ts';

const stepWords: Record<Step, string> = {
  'on-hold': 'on hold',
  sieve: 'sieve',
  stir: 'stir first',
  measure: 'measure',
  use: 'ready',
  'add-water': 'wants water',
  'draw-off-water': 'too much water',
  'add-dry': 'wants dry batch',
  flocculate: 'wants flocculant',
  'stir-on': 'stir on',
  deflocculate: 'over-flocculated',
  'ask-keeper': 'for a keeper',
};

export const bucketWords = {
  about: 'The shared buckets: list, card, log; for keepers: set up, change, hold, retire',
  list: 'All buckets and what each needs',
  show: "One bucket's card and chart",
  log: "A bucket's logbook, newest first",
  add: 'Set a bucket up',
  change: 'Change what is set of a bucket',
  hold: 'Put a bucket on hold: nobody uses or changes it',
  release: 'Let a held bucket be used again',
  retire: 'Take a bucket out of use for good; its log stays',
  name: 'What the bucket is called',
  nick: 'A short name to type',
  pail: 'What the pail holds to the rim',
  volume: 'How much glaze is in it now',
  gravity: 'Window of specific gravity, low-high',
  seconds: 'Window of efflux seconds, low-high',
  cup: 'The flow cup that the seconds are for',
  solids: 'Gravity of the dry powder (2.6 when not said)',
  rest: 'How long after a stir it may be used without another (1 h)',
  fresh: 'How long a reading is good for (7 days)',
  mesh: 'Its sieve mesh (80), or never',
  use: 'What it is for',
  cautions: 'All there is to warn of (gloves, caustic, barium …), or none',
  recipe: 'Its recipe, by the name that it is kept under, or typed out',
  glaze: 'The glaze, when several pails hold the same',
  sameAs: 'A bucket that holds the same glaze: one may be poured into the other',
  rim: 'Inside diameter at the rim',
  bottom: 'Inside diameter at the bottom',
  height: 'Inside height',
  why: 'Why it is held',
  cause: 'What sort of trouble',
  most: 'How many entries',
  before: 'Only entries before this number',
  retiredToo: 'Show retired ones too',
  factNumber: 'Bucket',
  factWindow: 'Aims at',
  factVolume: 'Holds',
  factPowder: 'Powder',
  factDry: 'Dry content',
  factRest: 'Rests',
  label: (no: number, name: string, { retired, held }: { retired: boolean; held: boolean }): string =>
    `${no} · ${name}${retired ? ' (retired)' : held ? ' (on hold)' : ''}`,
  numberAndNick: (no: number, nick: string | undefined): Text =>
    nick === undefined ? t`${no}` : t`${no}, “${said(nick)}” for short`,
  windows: (
    gravity: { low: number; high: number } | undefined,
    efflux: { low: number; high: number } | undefined,
    cup: string | undefined,
  ): Text => {
    const weight = gravity ? windowText(gravity) : '';
    const flow = efflux ? `${efflux.low} to ${efflux.high} s` : '';
    const both = [weight, flow].filter((part) => part !== '').join(', ');
    return cup !== undefined && efflux ? t`${[both]} by ${said(cup)}` : [both];
  },
  holds: (ml: number, pail: number | undefined, units: UnitSystem): Text =>
    pail === undefined
      ? t`about ${[volumeAbout(ml, units)]}`
      : t`about ${[volumeAbout(ml, units)]} of ${[volumeText(pail, units)]}`,
  powder: (solids: number, usual: boolean): Text =>
    usual
      ? t`gravity ${[String(solids)]}, the usual one, assumed until a keeper says another`
      : t`gravity ${[String(solids)]}`,
  dry: (perLitre: number, fraction: number, units: UnitSystem): Text =>
    t`${[dryContentText(perLitre, units)]}, ${[`${(100 * fraction).toFixed(0)} %`]} of it by volume`,
  caution: (caution: BucketCaution): Text => [bucketCautionWords[caution]],
  added: (no: number, name: string, held: boolean): Text =>
    held
      ? t`${said(name)} is bucket ${no}, and it is on hold.`
      : t`${said(name)} is bucket ${no}. Stir it, then log a first reading.`,
  changed: (name: string, held: boolean): Text =>
    held ? t`${said(name)} is changed, and it is on hold.` : t`${said(name)} is changed.`,
  poison: (what: Poison): string =>
    `${what === 'lead' || what === 'cadmium' ? 'raw ' : ''}${what}: held until a keeper and a laboratory have cleared it`,
  mixedWith: (name: string): string => `glaze from ${name} went in`,
  mixedWithHeld: (name: string): string => `glaze from ${name} went in, which was on hold`,
  mixedWithUnknown: 'glaze went in, and nobody said which',
  sameAsItself: ['A bucket is the same as itself: name the other one. Nothing was saved.'] as Text,
  sameAsAndGlaze: ['Say same-as: or glaze:, not both. Nothing was saved.'] as Text,
  sameAsApart: (name: string, no: number): Text =>
    t`Another glaze, or a fresh batch, has gone into ${said(name)} since its glaze was named. Say first what it holds now: /bucket change bucket:${no} glaze: and its name. Nothing was saved.`,
  sameNow: (other: string): Text =>
    t`It holds the same glaze as ${said(other)}, and as every other bucket of that glaze. That ends for a bucket when another glaze, or a fresh batch, goes in.`,
  childrenAndHazard: (hazard: string): Text =>
    t`A bucket with ${[hazard]} in it is not for children. Mark it with the one or the other. Nothing was saved.`,
  nothingToChange: ['Say what to change, such as gravity:1.42-1.46.'] as Text,
  nameTaken: (name: string, no: number): Text =>
    t`“${said(name)}” is bucket ${no} already. Pick another name.`,
  nameIsNumber: (name: string): Text =>
    t`“${said(name)}” is a number, and buckets have numbers already. Pick a name.`,
  moreThanPail: (volume: number, pail: number): Text =>
    t`${[volumeText(volume)]} does not fit a pail of ${[volumeText(pail)]}.`,
  windowAboveSolids: (high: number, solids: number): Text =>
    t`A slurry can't reach ${[gravityText(high)]}: its powder is ${[gravityText(solids)]}.`,
  oddShape: [
    'That pail is far wider at the bottom than at the rim. Are rim and bottom the wrong way round?',
  ] as Text,
  notHeld: (name: string): Text => t`${said(name)} is not on hold.`,
  alreadyRetired: (name: string): Text => t`${said(name)} is retired already.`,
  listTitle: (count: number, ready: number): Text =>
    count === 0
      ? ['No buckets yet. A keeper sets one up: /bucket add name:"Gull Grey" pail:19l gravity:1.42-1.46.']
      : t`${ready} of ${count} ready to use.`,
  listName: (no: number, name: string): Text => t`${no} · ${said(name)}`,
  listText: (verdict: Verdict, units: UnitSystem): Text => {
    const amount =
      verdict.amounts.waterMl === undefined
        ? ''
        : ` (${volumeText(handAmount(verdict.amounts.waterMl), units)})`;
    const gravity = verdict.gravity?.believed ? `, ${gravityText(verdict.gravity.value)}` : '';
    const stir =
      verdict.hoursSinceStir === null
        ? ', no stir logged'
        : verdict.hoursSinceStir < 1 / 60
          ? ', just stirred'
          : `, stirred ${agoText(verdict.hoursSinceStir)} ago`;
    return [`${stepWords[verdict.keeperStep ?? verdict.step]}${amount}${gravity}${stir}`];
  },
  stepName: (step: Step): string => stepWords[step],
  stepNames: stepWords,
  logTitle: (name: string, count: number): Text =>
    count === 0
      ? t`Nothing logged of ${said(name)} before that.`
      : t`${said(name)}: the last ${count} entries.`,
  older: (): Text => ['Older'],
};
